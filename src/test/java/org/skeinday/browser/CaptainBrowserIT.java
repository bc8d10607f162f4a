package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** The captain over one attempt, from the choice to the official time, with a plan that slips in the middle of it. */
@Timeout(240)
class CaptainBrowserIT {
    private static final int MOST_TAPS = 12;

    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());

    @TempDir
    Path root;

    private App app;
    private Visitor other;
    private FilledForms forms;
    private int taps;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        other = new Visitor(app.port(), "", 91);
        forms = new FilledForms(other);
        forms.window("Curlew", clock, 0, 45);
        forms.window("Avocet", clock, 60, 120);
        forms.window(
                "Plover", clock, 200, 212); // the demo's windows stand from the run's start on: here Curlew is next
        forms.window("Dunlin", clock, 215, 227);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    @Test
    void one_attempt_with_a_plan_that_slips_takes_the_captain_at_most_twelve_taps() throws Exception {
        laptop.get(at("/"));
        Sight.waitFor(laptop, "start winding at the latest in");
        Sight.waitFor(laptop, "left after it");
        Sight.waitFor(laptop, "expected time");
        Sight.look(laptop, "captain-next");
        phone.get(at("/"));
        Sight.waitFor(phone, "left after it");
        Sight.look(phone, "captain-next-phone");
        plan();
        tap("Call Curlew, attempt 1");
        Sight.waitFor(laptop, "start winding at the latest in");
        Sight.look(laptop, "captain-called");
        clock.stepBy(Duration.ofMinutes(9));
        laptop.navigate().refresh();
        Sight.waitFor(laptop, "The plan has slipped");
        Sight.look(laptop, "captain-slipped");
        follow("See what can be done");
        Sight.waitFor(laptop, "It moves:");
        Sight.look(laptop, "captain-proposal");
        tap("Take this plan");
        Sight.waitFor(laptop, "Every window is kept with at least");
        bar();
        CalledForTests.letWind(java.net.URI.create(at("/")).getPort());
        Sight.waitFor(laptop, "answered for by");
        tap("Start winding");
        tap("Wound");
        Sight.waitFor(laptop, "by hand signal");
        Sight.look(laptop, "captain-holding");
        fly();
        Sight.waitFor(laptop, "Take the official time");
        tap("Take the official time");
        Sight.waitFor(laptop, "Curlew, attempt 2");
        System.out.println("the captain's taps over one attempt with a slip: " + taps);
        assertTrue(taps <= MOST_TAPS, "the captain's taps over one attempt: " + taps);
    }

    /** The plan of the day is made before; it is no part of the attempt. */
    private void plan() throws Exception {
        String html = other.form("/day/propose", Map.of()).body();
        String id = CalledForTests.value(html, "name=\"proposal\" value=\"([^\"]+)\"");
        assertEquals(200, other.form("/day/take", Map.of("proposal", id)).statusCode());
    }

    private void fly() throws Exception {
        String attempt = CalledForTests.value(other.get("/timing/part").body(), "name=\"attempt\" value=\"([^\"]+)\"");
        List<Visitor> watches = List.of(Demo.joined(app, "timekeeper", "", 93), Demo.joined(app, "timekeeper", "", 94));
        for (int slot = 1; slot <= 2; slot++) {
            Visitor watch = watches.get(slot - 1);
            watch.form("/watch/take", Map.of("attempt", attempt, "slot", String.valueOf(slot)));
            watch.tap(
                    "watch.release",
                    content()
                            .put("attempt", attempt)
                            .put("slot", slot)
                            .put("serverMs", clock.millis())
                            .put("boundMs", 20));
        }
        clock.stepBy(Duration.ofMillis(101_000));
        for (int slot = 1; slot <= 2; slot++) {
            watches.get(slot - 1)
                    .tap(
                            "watch.landing",
                            content().put("attempt", attempt).put("slot", slot).put("ms", 101_000 + 20 * slot));
        }
    }

    @Test
    void the_choice_for_the_attempts_left_is_counted_out_from_flights_and_breaks_and_hidden_while_quiet()
            throws Exception {
        laptop.get(at("/"));
        String choice = String.valueOf(
                laptop.findElement(By.linkText("Choice for the attempts left")).getDomProperty("href"));
        laptop.get(choice);
        Sight.waitFor(laptop, "too few breaks to tell");
        assertFalse(Sight.text(laptop).contains("The expected score"), Sight.text(laptop));
        Sight.look(laptop, "captain-choice-missing");
        breakMotor("C2", 262);
        breakMotor("C4", 271);
        breakMotor("C5", 279);
        laptop.navigate().refresh();
        Sight.waitFor(laptop, "The expected score");
        Sight.waitFor(laptop, "C1 at");
        Sight.look(laptop, "captain-choice");
        phone.get(choice);
        Sight.waitFor(phone, "The expected score");
        Sight.look(phone, "captain-choice-phone");
        laptop.get(at("/"));
        Sight.touch(laptop, b -> new Select(b.findElement(By.id("motor"))).selectByIndex(optionOf("C1")));
        Sight.waitFor(laptop, "3 of");
        Sight.look(laptop, "captain-risk");
        forms.save("terms", forms.row("terms", "Saltmarsh Rotor Day"), Map.of("outside-help", "none"));
        CalledForTests.callOnly(other);
        phone.navigate().refresh();
        Sight.waitFor(phone, "Outside help is not allowed");
        assertFalse(Sight.text(phone).contains("The expected score"), Sight.text(phone));
        Sight.look(phone, "captain-choice-quiet");
        laptop.get(at("/"));
        Sight.waitFor(laptop, "Quiet since");
        assertFalse(Sight.text(laptop).contains("expected time"), Sight.text(laptop));
    }

    private int optionOf(String tag) {
        var options = new Select(laptop.findElement(By.id("motor"))).getOptions();
        for (int i = 0; i < options.size(); i++) {
            if (options.get(i).getText().startsWith(tag + " ")) {
                return i;
            }
        }
        throw new AssertionError(tag + " in " + Sight.text(laptop));
    }

    /** Wound to breaking, read in four marks. */
    private void breakMotor(String tag, int crankTurns) throws Exception {
        String motor = forms.row("motors", tag).replaceFirst(".*/", "");
        String id = other.newId();
        other.tapAs(id, "wind.alone", content().put("motor", motor).put("stop", "breaking"));
        String wind = id + "-0";
        for (int i = 1; i <= 4; i++) {
            other.tap("wind.mark", content().put("wind", wind).put("step", 1).put("elapsedMs", i * 20_000));
        }
        other.tap(
                "wind.phase", content().put("wind", wind).put("phase", "broke").put("elapsedMs", 170_000));
        other.tap(
                "wind.phase",
                content().put("wind", wind).put("phase", "off-meter").put("elapsedMs", 175_000));
        assertEquals(
                200,
                other.form(
                                "/winding/motor/" + motor + "/count",
                                Map.of("wind", wind, "atFull", "", "stop", String.valueOf(crankTurns), "backOff", ""))
                        .statusCode());
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private void tap(String words) {
        Sight.waitFor(laptop, words);
        Hand.press(laptop, words);
        taps++;
    }

    private void follow(String words) {
        Sight.touch(laptop, b -> b.findElement(By.linkText(words)).click());
        taps++;
    }

    private void bar() {
        Sight.touch(
                laptop, b -> b.findElement(By.cssSelector("nav a[href='/']")).click());
        taps++;
        Sight.waitFor(laptop, "Curlew, attempt 1");
    }

    private String at(String path) {
        return "http://localhost:" + app.port() + path;
    }
}
