package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.Program;
import org.skeinday.Visitor;

/** The helper's Bench on a phone, seen on the laptop; its timers over a reload, a kill and a restart. */
@Timeout(180)
class BenchBrowserIT {
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
    private final ChromeDriver tablet = Browsers.of(Browsers.Size.TABLET);
    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);

    @TempDir
    Path root;

    @Test
    void a_motor_is_made_ready_on_a_phone_and_its_timer_is_the_same_everywhere_over_a_kill() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        Program program = Program.serve(data, port);
        long until;
        try {
            waits(port);
            Sight.join(phone, program, "Ayla", "helper");
            phone.get(program.at("/bench"));
            tablet.get(program.at("/bench/wall"));
            laptop.get(program.at("/bench"));
            Sight.look(phone, "bench-first");
            Sight.look(laptop, "bench-laptop");
            press(phone, "A3", "Lubricated");
            until = until(laptop, "A3");
            assertEquals(until, until(phone, "A3"), "one end for all");
            sameSecond();
            Sight.look(phone, "bench-soaks");
            phone.navigate().refresh();
            assertEquals(until, until(phone, "A3"), "over a reload");
        } finally {
            program.kill();
        }
        try (Program again = Program.serve(data, port)) {
            assertEquals(until, until(laptop, "A3"), "over a kill");
            laptop.get(again.at("/bench"));
            assertEquals(until, until(laptop, "A3"), "over a restart");
            rings();
            press(phone, "A3", "Stretched, held");
            press(phone, "A3", "Laid to rest");
            waitFor(laptop, article("A3") + "//*[contains(@class,'state') and text()='resting']");
            press(phone, "A3", "Take back: resting");
            waitFor(laptop, article("A3") + "//*[contains(@class,'state') and text()='conditioned']");
            open(phone, "A3");
            Sight.look(phone, "bench-more");
            press(phone, "A3", "Fell on the floor");
            waitFor(laptop, article("A3") + "//*[contains(@class,'state') and text()='gritty']");
            Sight.look(laptop, "bench-gritty");
            Hand.tap(phone, By.linkText("A3"));
            waitFor(phone, "//h2[text()='What was done to it']");
            Sight.look(phone, "bench-motor");
            laptop.get(again.at("/bench/waits"));
            Sight.look(laptop, "bench-waits");
        }
        assertEquals(0, Program.run("verify", "--data", data.toString()));
    }

    /** Ten seconds to soak: long enough to be killed in, short enough to be waited for. */
    private static void waits(int port) throws Exception {
        var answer = new Visitor(port, "", 41)
                .form(
                        "/bench/waits",
                        Map.of("name", "soak", "least", "0", "wished", "0:15", "longest", "", "required", ""));
        assertEquals(200, answer.statusCode(), answer.body());
    }

    /** Both read at once, three times: never more than a second apart, and most often the same. */
    private void sameSecond() {
        int same = 0;
        for (int i = 0; i < 5; i++) {
            int one = seconds(phone.findElement(By.xpath(article("A3") + "//*[@data-rings]"))
                    .getText());
            int other =
                    seconds(tablet.findElement(By.cssSelector("[data-rings]")).getText());
            assertTrue(Math.abs(one - other) <= 1, one + " and " + other);
            same += one == other ? 1 : 0;
        }
        assertTrue(same >= 3, "the same second " + same + " times of 5");
        Browsers.shot(tablet, "bench-wall");
    }

    private static int seconds(String words) {
        String[] parts = words.replace("−", "").split(":");
        return Integer.parseInt(parts[0]) * 60 + Integer.parseInt(parts[1]);
    }

    /** The wall flashes when the wait is over. */
    private void rings() {
        new WebDriverWait(tablet, Duration.ofSeconds(30))
                .ignoring(WebDriverException.class)
                .until(b -> b.findElement(By.cssSelector("[data-rings].over")));
        Sight.look(tablet, "bench-wall-over");
    }

    private static String article(String tag) {
        return "//article[@aria-label='Motor " + tag + "']";
    }

    private static long until(ChromeDriver browser, String tag) {
        return new WebDriverWait(browser, Duration.ofSeconds(15))
                .ignoring(WebDriverException.class)
                .until(b ->
                        Long.valueOf(Objects.requireNonNull(b.findElement(By.xpath(article(tag) + "//*[@data-rings]"))
                                .getDomAttribute("data-until"))));
    }

    private static void open(ChromeDriver browser, String tag) {
        Hand.tap(browser, By.xpath(article(tag) + "//summary"));
    }

    private static void press(ChromeDriver browser, String tag, String words) {
        new WebDriverWait(browser, Duration.ofSeconds(15))
                .ignoring(WebDriverException.class)
                .until(b -> {
                    b.findElement(By.xpath(article(tag) + "//button[text()='" + words + "']"))
                            .click();
                    return true;
                });
    }

    private static void waitFor(ChromeDriver browser, String path) {
        new WebDriverWait(browser, Duration.ofSeconds(15))
                .ignoring(WebDriverException.class)
                .until(b -> b.findElement(By.xpath(path)));
    }
}
