package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;

/**
 * Two attempts, helped and read on one phone and followed on the laptop: the first as planned, the second with a motor
 * that breaks and its spare.
 */
@Timeout(240)
class AttemptsBrowserIT {
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
    private int taps;
    private Program program;
    private Visitor captain;
    private String attempt = "";

    @TempDir
    Path root;

    @Test
    void two_attempts_are_wound_flown_and_told_with_few_taps_and_no_typing() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        try (Program started = Program.serve(data, port)) {
            program = started;
            captain = new Visitor(port, "", 90);
            Sight.join(phone, program, "Ayla", "helper");
            asPlanned();
            int first = taps;
            System.out.println("taps of helper and reader over one attempt: " + first + ", nothing typed");
            assertTrue(first <= 30, first + " taps");
            close();
            withTheSpare();
        }
        assertEquals(0, Program.run("verify", "--data", data.toString()));
    }

    private void asPlanned() throws Exception {
        phone.get(program.at("/bench"));
        bench("A3", "Lubricated");
        bench("A3", "Stretched, held");
        bench("A3", "Laid to rest");
        call("A3");
        aim();
        phone.get(program.at("/winding"));
        laptop.get(program.at("/winding"));
        waitFor(phone, "First crank turn");
        assertTrue(text(phone).contains("0.40 in·ozf") && text(phone).contains("0.20 in·ozf"), text(phone));
        Sight.look(phone, "attempts-before");
        key("begin");
        marks(4);
        say("stepping-in");
        marks(3);
        waitFor(phone, "on the meter · 1 to go");
        waitFor(phone, "torque limit 8 on the meter (0.40 in·ozf)");
        waitFor(laptop, "on the meter · 1 to go");
        waitFor(laptop, "torque limit 8 on the meter (0.40 in·ozf)");
        waitFor(laptop, "walking in");
        Sight.look(phone, "attempts-reader");
        Sight.look(laptop, "attempts-picture-live");
        say("stopped");
        waitFor(phone, "launch at 4");
        waitFor(phone, "back off 2 crank turns at least");
        for (int i = 0; i < 3; i++) {
            key("down");
        }
        say("backed-off");
        waitFor(phone, "bleed not known, hold at most 60 s");
        Sight.look(phone, "attempts-hold");
        say("off-meter");
        move("released");
        tap(By.cssSelector("form[hx-post='/winding/count'] button"));
        waitFor(phone, "Counted.");
        move("landed");
        waitFor(phone, "After the landing");
        tap(By.cssSelector("[data-step='10']"));
        tap(By.cssSelector("[data-step='10']"));
        tap(By.cssSelector("[data-step='1']"));
        tap(By.cssSelector("form[hx-post='/winding/landed'] button:not([data-step])"));
        waitFor(phone, "Noted.");
        waitFor(phone, "launch torque as wanted");
        waitFor(phone, "210 motor turns");
        Sight.look(phone, "attempts-after");
        Sight.look(laptop, "attempts-after-laptop");
        phone.get(program.at("/bench"));
        bench("A3", "Laid to rest");
    }

    private void withTheSpare() throws Exception {
        call("B2");
        phone.get(program.at("/winding"));
        waitFor(phone, "motor B2");
        key("begin");
        marks(2);
        key("broke"); // a press is no break: it must be held
        Hand.hold(phone, By.cssSelector("[data-broke]"));
        taps++;
        Sight.waitFor(phone, "#first", "Broke. Hands off. Check people.");
        Sight.look(phone, "attempts-broke");
        Sight.waitFor(laptop, "#first", "Broke. Hands off. Check people.");
        Sight.look(laptop, "attempts-broke-laptop");
        Number apart = (Number) laptop.executeScript(
                "const at = words => document.querySelector(`#first form[hx-post='${words}'] button`)"
                        + ".getBoundingClientRect(); return at('/hall/stop').top - at('/attempt/people-safe').bottom;");
        assertTrue(apart.doubleValue() >= 12, "a hasty finger must not stop the hall: " + apart + " px");
        tap(By.cssSelector("#first form[hx-post='/attempt/people-safe'] button"));
        Sight.waitFor(phone, "#first", "Where did it part?");
        Sight.look(phone, "attempts-parted");
        tap(By.xpath("//button[.='In the strand']"));
        waitFor(phone, "Crank turns when it broke");
        Hand.type(phone, By.name("stop"), "150");
        tap(By.cssSelector("form[hx-post='/winding/count'] button"));
        waitFor(phone, "1500 motor turns");
        Sight.look(phone, "attempts-broke-counted");
        tap(By.xpath("//button[starts-with(.,'C1,')]"));
        waitFor(phone, "motor C1");
        waitFor(laptop, "motor C1");
        waitFor(phone, "Winding waits for"); // another wind asks for eyes and line again
        Sight.look(phone, "attempts-spare");
        CalledForTests.lookAgain(captain, attempt);
        waitFor(phone, "First crank turn");
        key("begin");
        marks(2);
        waitFor(laptop, "0.10 in·ozf");
        say("stepping-in");
        say("stopped");
        waitFor(laptop, "last turn is on, backing off");
        move("released");
        move("landed");
        tap(By.cssSelector("form[hx-post='/winding/count'] button"));
        waitFor(phone, "Counted.");
        Hand.tap(phone, By.cssSelector(".spoilt summary"));
        Hand.type(phone, By.name("spoilt"), "touched a wall");
        Hand.type(phone, By.name("contact"), "0:31");
        Sight.look(phone, "attempts-spoilt");
        tap(By.cssSelector("form[hx-post='/winding/landed'] button:not([data-step])"));
        waitFor(phone, "Noted.");
        laptop.get(program.at("/bench"));
        assertTrue(laptop.getPageSource().contains("broken"));
    }

    private void call(String tag) throws Exception {
        String motor = CalledForTests.value(captain.get("/bench").body(), "/bench/motor/([^\"]+)\">" + tag + "<");
        String entry =
                CalledForTests.value(captain.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        var called = captain.form("/attempt/call", Map.of("entry", entry, "motor", motor));
        assertEquals(200, called.statusCode(), called.body());
        attempt = CalledForTests.value(called.body(), "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(captain, attempt);
    }

    private void aim() throws Exception {
        var aimed = captain.form(
                "/winding/aim", Map.of("attempt", attempt, "launch", "0.2", "ceiling", "0.4", "unit", "in-ozf"));
        assertEquals(200, aimed.statusCode(), aimed.body());
    }

    private void move(String to) throws Exception {
        var moved = captain.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
        assertEquals(200, moved.statusCode(), moved.body());
    }

    private void close() throws Exception {
        var ended = captain.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "no watch ran", "seen", ""));
        assertEquals(200, ended.statusCode(), ended.body());
    }

    /** Marks of 0.05 in·ozf; a needle takes longer for one than a key that bounces. */
    private void marks(int many) {
        for (int i = 0; i < many; i++) {
            String before = new WebDriverWait(phone, Duration.ofSeconds(10))
                    .ignoring(WebDriverException.class)
                    .until(b -> b.findElement(By.cssSelector("[data-torque]")).getText());
            key("up");
            new WebDriverWait(phone, Duration.ofSeconds(10))
                    .ignoring(WebDriverException.class)
                    .withMessage(() -> "another torque than " + before + " in " + text(phone))
                    .until(b -> !b.findElement(By.cssSelector("[data-torque]"))
                            .getText()
                            .equals(before));
        }
    }

    private void say(String step) {
        key("say=" + step);
    }

    private void key(String name) {
        tap(By.cssSelector("[data-reader] [data-" + name + "]"));
    }

    private void bench(String tag, String words) {
        tap(By.xpath("//article[@aria-label='Motor " + tag + "']//button[text()='" + words + "']"));
    }

    private void tap(By what) {
        Hand.tap(phone, what);
        taps++;
    }

    private static String text(ChromeDriver browser) {
        return Sight.words(browser, "#winding");
    }

    private static void waitFor(ChromeDriver browser, String... oneOf) {
        new WebDriverWait(browser, Duration.ofSeconds(15))
                .ignoring(WebDriverException.class)
                .withMessage(() -> String.join(" or ", oneOf) + " in " + text(browser))
                .until(b -> Arrays.stream(oneOf).anyMatch(text((ChromeDriver) b)::contains));
    }
}
