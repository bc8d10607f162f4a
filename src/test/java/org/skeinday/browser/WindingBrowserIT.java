package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;

/** The reader on a phone, followed on the laptop, with the server killed in the middle of the wind. */
@Timeout(180)
class WindingBrowserIT {
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
    private int taps;
    private String attempt = "";

    @TempDir
    Path root;

    @Test
    void a_wind_is_read_mark_by_mark_over_a_kill_and_counted_after_the_release() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        Program program = Program.serve(data, port);
        try {
            Sight.join(phone, program, "Ayla", "helper");
            phone.get(program.at("/winding"));
            laptop.get(program.at("/winding"));
            waitFor(laptop, "Nobody is called");
            callWithItsMotor(new Visitor(port, "", 50));
            waitFor(phone, "First crank turn");
            Sight.look(phone, "winding-before");
            key("begin");
            for (int i = 0; i < 5; i++) {
                up(i + 1);
            }
            waitFor(laptop, "winding at full stretch");
            waitFor(laptop, "0.25 in·ozf", "1.77 mN·m");
            Sight.waitFor(laptop, ".reading", "5");
            assertFalse(
                    laptop.findElement(By.id("winding")).getText().contains("+1 division"), "only the reader has keys");
            Sight.look(phone, "winding-reader");
            Sight.look(laptop, "winding-follows");
        } finally {
            program.kill();
        }
        up(6);
        step("stepping-in"); // while nobody answers
        try (Program again = Program.serve(data, port)) {
            phone.navigate().refresh();
            waitFor(phone, "walking in");
            up(7);
            key("down");
            up(7);
            Sight.look(phone, "winding-walking-in");
            waitFor(laptop, "walking in");
            step("stopped");
            waitFor(laptop, "last turn is on, backing off");
            Sight.look(phone, "winding-stopped");
            key("down");
            step("backed-off");
            Sight.waitFor(laptop, ".wind-live", "holding");
            assertTrue(new Visitor(port, "", 51).get("/bench").body().contains("wound"), "the motor is wound");
            step("off-meter");
            var released = new Visitor(port, "", 52)
                    .form("/attempt/move", Map.of("attempt", attempt, "to", "released", "seen", ""));
            assertEquals(200, released.statusCode(), released.body());
            waitFor(phone, "Crank turns at the last turn");
            Sight.look(phone, "winding-after");
            Hand.type(phone, By.name("stop"), Keys.chord(Keys.CONTROL, "a") + "206"); // whatever its pace offers
            taps++;
            Hand.tap(phone, By.cssSelector(".counts button"));
            taps++;
            waitFor(phone, "Counted.");
            waitFor(phone, "launched with");
            Sight.look(phone, "winding-counted");
            String page = phone.findElement(By.id("winding")).getText();
            assertTrue(page.matches("(?s).*highest torque.*0\\.35 in·ozf.*at launch.*0\\.30 in·ozf.*"), page);
        }
        System.out.println("a reader's taps for one wind of seven marks: " + taps);
        assertTrue(taps <= 30, taps + " taps");
        assertEquals(0, Program.run("verify", "--data", data.toString()));
    }

    private void callWithItsMotor(Visitor captain) throws Exception {
        String motor = CalledForTests.value(captain.get("/bench").body(), "/bench/motor/([^\"]+)\">A3<");
        String entry = CalledForTests.value(
                captain.get("/now").body(),
                "name=\"entry\" value=\"([^\"]+)\"><input type=\"hidden\" name=\"number\" value=\"1\">(?:<input[^>]*>)*<button aria-label=\"Call Curlew\"");
        var called = captain.form("/attempt/call", Map.of("entry", entry, "motor", motor));
        assertEquals(200, called.statusCode(), called.body());
        attempt = CalledForTests.value(called.body(), "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(captain, attempt);
    }

    /** Each step has its own key, in the same place from the first crank turn on. */
    private void step(String name) {
        Hand.tap(phone, By.cssSelector("[data-say=" + name + "]"));
        taps++;
    }

    private void key(String name) {
        Hand.tap(phone, By.cssSelector("[data-" + name + "]"));
        taps++;
    }

    /** Marks of 0.05 in·ozf each; a needle takes longer for one than a key that bounces. */
    private void up(int level) {
        key("up");
        String words = String.format(java.util.Locale.ROOT, "%.2f in·ozf", level * 0.05);
        new WebDriverWait(phone, Duration.ofSeconds(10))
                .ignoring(WebDriverException.class)
                .withMessage(() -> words + " in " + Sight.words(phone, "#winding"))
                .until(b ->
                        b.findElement(By.cssSelector("[data-torque]")).getText().equals(words));
    }

    private static void waitFor(ChromeDriver browser, String... oneOf) {
        new WebDriverWait(browser, Duration.ofSeconds(15))
                .ignoring(WebDriverException.class)
                .withMessage(() -> String.join(" or ", oneOf) + " in " + Sight.words(browser, "#winding"))
                .until(b -> {
                    String text = b.findElement(By.id("winding")).getText();
                    return java.util.Arrays.stream(oneOf).anyMatch(text::contains);
                });
    }
}
