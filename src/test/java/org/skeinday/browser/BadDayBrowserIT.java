package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
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
import org.skeinday.CodeOfDay;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.prepare.FilledForms;

/**
 * A bad day on a laptop and three phones: a break, the spare, a touch, a watch out, a hand's time, a protest, a moved window,
 * an attempt given up while it is wound. Every device sees each of them, and nobody is left without a way on.
 */
@Timeout(300)
class BadDayBrowserIT {
    private static final String UNHURT = "Everyone unhurt, both ends found";
    private static final String RUN_BACK = "Run it back: how many turns are on?";

    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
    private final ChromeDriver reader = Browsers.of(Browsers.Size.PHONE);
    private final ChromeDriver watch = Browsers.of(Browsers.Size.TABLET);
    private final ChromeDriver helper = Browsers.of(Browsers.Size.SIDEWAYS);

    @TempDir
    Path root;

    private App app;
    private Visitor captain;
    private String attempt = "";

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        captain = new Visitor(app.port(), "", 31);
        window(0, 20);
    }

    @AfterEach
    void stop() throws Exception {
        for (ChromeDriver phone : List.of(reader, watch, helper)) {
            phone.manage().deleteAllCookies();
        }
        app.close();
    }

    private void window(int from, int to) throws Exception {
        new FilledForms(captain).window("Curlew", Clock.systemDefaultZone(), from, to);
    }

    private String at(String path) {
        return "http://localhost:" + app.port() + path;
    }

    /** Where a phone has joined: at the laptop's own name it would be the laptop. */
    private String joined(String path) {
        return app.joinLink().replaceFirst("/join.*", "") + path;
    }

    private List<ChromeDriver> all() {
        return List.of(laptop, reader, watch, helper);
    }

    @Test
    void from_every_bad_moment_there_is_a_way_to_the_end_on_every_device() throws Exception {
        join();
        itBreaksAndTheSpareIsTaken();
        itTouchesAndOneWatchIsOut();
        protestedAndTheWindowMoves();
        abandonedWhileWound();
    }

    private void join() throws Exception {
        for (ChromeDriver phone : List.of(reader, helper)) {
            phone.get(app.joinLink());
            Hand.tap(phone, By.cssSelector("button[value=helper]"));
            Sight.waitFor(phone, "Curlew");
        }
        watch.get(app.joinLink());
        Sight.typeCode(watch, CodeOfDay.handedOut(app.port()));
        Hand.tap(watch, By.cssSelector("button[value=timekeeper]"));
        Sight.waitFor(watch, "as soon as the captain calls");
        for (ChromeDriver phone : List.of(reader, watch, helper)) {
            assertFalse(Sight.words(phone, "body").contains("this laptop"), "a device of its own");
        }
    }

    private void call(int number) throws Exception {
        laptop.get(at("/"));
        Hand.press(laptop, "Call Curlew, attempt " + number);
        Sight.waitFor(laptop, "Winding waits for");
        attempt = CalledForTests.letWind(captain);
        Sight.waitFor(laptop, "Start winding");
        reader.get(joined("/winding"));
        Sight.waitFor(reader, "First crank turn");
        lookAll("called-" + number);
    }

    private void key(String name) {
        Hand.tap(reader, By.cssSelector("[data-reader] [data-" + name + "]"));
    }

    private void say(String phase) {
        Hand.tap(reader, By.cssSelector("[data-reader] .key-row [data-say='" + phase + "']"));
    }

    private static By button(String words) {
        return By.xpath("//button[.='" + words + "']");
    }

    /** Unmissable on all four, and no rule of accessibility is broken there. */
    private void first(String words, String name) {
        for (ChromeDriver browser : all()) {
            Sight.waitFor(browser, "#first", words);
        }
        lookAll(name);
    }

    /** What stands on the four devices in this state: none is wider than its screen or breaks a rule of accessibility. */
    private void lookAll(String state) {
        Sight.look(laptop, "bad-" + state + "-laptop");
        Sight.look(reader, "bad-" + state + "-reader");
        Sight.look(watch, "bad-" + state + "-watch");
        Sight.look(helper, "bad-" + state + "-helper");
    }

    private void answered(String words) {
        for (ChromeDriver browser : all()) {
            Sight.waitGoneFrom(browser, "#first", words);
        }
    }

    private void itBreaksAndTheSpareIsTaken() throws Exception {
        call(1);
        helper.get(joined("/bench"));
        Hand.press(watch, "Watch 1");
        Sight.waitFor(watch, "· watch 1");
        key("begin");
        Sight.waitFor(laptop, "#now h1 .state", "winding");
        lookAll("winding");
        Hand.hold(reader, By.cssSelector("[data-reader] [data-broke]"));
        first("Broke. Hands off. Check people.", "broke");
        assertFalse(Sight.text(laptop).contains("Another motor"), "people come first");
        Hand.tap(helper, button(UNHURT));
        first("Where did it part?", "parted");
        Hand.tap(laptop, button("In the strand"));
        answered("Where did it part?");
        Sight.waitFor(laptop, "Another motor");
        lookAll("spare");
        Hand.tap(laptop, By.cssSelector("form[hx-post='/attempt/take-motor'] button"));
        Sight.waitFor(laptop, "winding, 2nd");
        Sight.waitFor(reader, "Winding waits for"); // another wind asks the checks again
        CalledForTests.lookAgain(captain, attempt);
        Sight.waitFor(reader, "First crank turn");
        lookAll("second");
    }

    private void itTouchesAndOneWatchIsOut() throws Exception {
        key("begin");
        say("stopped");
        Sight.waitFor(laptop, "#now h1 .state", "holding");
        Sight.waitFor(laptop, "Goggles stay on until release");
        lookAll("holding");
        Hand.tap(watch, By.id("watch-target"));
        Sight.waitFor(laptop, "#now h1 .state", "in the air");
        Sight.waitFor(laptop, "Nobody walks while looking up.");
        lookAll("in-the-air");
        Hand.tap(watch, By.id("watch-touched"));
        Sight.waitFor(watch, "touched at");
        Sight.pastDoubleTap(watch);
        lookAll("touched");
        itIsCaught();
        Hand.tap(watch, By.id("watch-target"));
        Sight.waitFor(watch, "Saved");
        Sight.waitFor(laptop, "#now h1 .state", "landed");
        Sight.waitFor(laptop, "A landed motor is live");
        lookAll("landed");
        typed();
        out();
        take();
    }

    /** Seen by the captain; a phone held sideways shows it too. */
    private void itIsCaught() {
        helper.get(joined("/"));
        Hand.press(laptop, "Caught by the building");
        Sight.waitFor(laptop, "Caught, held for");
        Sight.waitFor(helper, "Caught, held for");
        lookAll("caught");
        Hand.press(laptop, "Free again");
        Sight.waitGone(laptop, "Caught, held for");
    }

    private void typed() {
        // it stands open where the model was caught and a watch may have no mark of it
        if (laptop.findElements(By.cssSelector("details.type-time[open]")).isEmpty()) {
            Hand.tap(laptop, By.cssSelector("details.type-time summary"));
        }
        new Select(laptop.findElement(By.name("typed-slot"))).selectByValue("2");
        Hand.type(laptop, By.id("typed"), "1:43.62");
        Hand.press(laptop, "Save its time");
        Sight.waitFor(laptop, "1:43.62");
    }

    private void out() {
        Hand.tap(laptop, By.cssSelector("details.judge summary"));
        new Select(laptop.findElement(By.id("judge-slot"))).selectByValue("1");
        new Select(laptop.findElement(By.id("judge-verdict"))).selectByValue("left-out");
        Hand.type(laptop, By.id("judged"), "pressed at the touch");
        Hand.press(laptop, "Record it");
        Sight.waitFor(laptop, "left out");
        lookAll("out");
    }

    /** One watch is left: it is for a person to say that its time is taken. */
    private void take() {
        if (!laptop.findElements(By.id("why")).isEmpty()) {
            Hand.type(laptop, By.id("why"), "both saw the landing");
        }
        Hand.press(laptop, "Take the official time");
        Sight.waitFor(laptop, "Curlew, attempt 2");
        helper.get(joined("/attempt/" + attempt));
        Sight.waitFor(helper, "1:43");
    }

    private void protestedAndTheWindowMoves() throws Exception {
        laptop.get(at("/attempt/" + attempt));
        Hand.tap(laptop, By.xpath("//summary[.='Protest']"));
        Hand.type(laptop, By.id("words"), "The landing was seen by one only, section 4");
        Hand.press(laptop, "Mark as protested");
        Sight.waitFor(laptop, "The landing was seen by one only");
        Sight.waitFor(helper, "The landing was seen by one only");
        lookAll("protest");
        String before = verdict();
        window(15, 30);
        laptop.get(at("/"));
        Sight.waitFor(laptop, "the window opens in");
        lookAll("moved");
        assertEquals(before, verdict(), "a window that moves changes no verdict of before");
        helper.get(joined("/results"));
        Sight.waitFor(helper, "protested");
        lookAll("results");
        window(0, 20);
    }

    /** What the record says of window and time. */
    private String verdict() throws Exception {
        String page = captain.get("/attempt/" + attempt).body();
        String said = CalledForTests.value(page, "<dt>how it came about</dt><dd>([^<]+)<");
        assertTrue(said.contains("inside the window"), said);
        return said;
    }

    private void abandonedWhileWound() throws Exception {
        call(2);
        watch.get(joined("/timing"));
        helper.get(joined("/checks"));
        key("begin");
        say("stopped");
        Sight.waitFor(laptop, "#now h1 .state", "holding");
        Hand.tap(laptop, By.cssSelector("details.give-up summary"));
        Hand.type(laptop, By.id("reason"), "a spectator walked in");
        Hand.tap(laptop, By.cssSelector("details.give-up button"));
        first(RUN_BACK, "run-back");
        Hand.type(helper, By.cssSelector("#first input[name=turns]"), "120");
        Hand.tap(helper, button("It is run back"));
        answered(RUN_BACK);
        Sight.waitFor(laptop, "Curlew, attempt 2");
        lookAll("abandoned");
        assertTrue(captain.get("/attempt/" + attempt).body().contains("a spectator walked in"), "the record says why");
        assertEquals(
                200,
                captain.form("/hall/stop", Map.of("stop-reason", "lights", "stop-words", ""))
                        .statusCode());
        first("The hall is stopped", "stopped");
    }
}
