package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;

/** A practice wind to the metronome on a phone, its beats on the audio clock, and a break test. */
@Timeout(180)
class PracticeWindBrowserIT {
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);

    @TempDir
    Path root;

    /** When each tone was asked to begin, by the audio clock, as the page asked for it. */
    private static final String LISTEN = "window.beatsAt = []; const start = OscillatorNode.prototype.start;"
            + " OscillatorNode.prototype.start = function (at) { window.beatsAt.push(at); return start.call(this, at); };";

    @Test
    void beats_stay_on_the_audio_clock_while_the_page_hangs_and_the_counts_are_marked_paced() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            String at = "http://localhost:" + app.port();
            String bench = new Visitor(app.port(), "", 95).get("/bench").body();
            String b1 = CalledForTests.value(bench, "/bench/motor/([^\"]+)\">B1<");
            phone.get(at + "/winding/motor/" + b1);
            phone.executeScript(LISTEN);
            tap("[data-sounds]");
            while (!text("[data-rate]").startsWith("120")) {
                tap("[data-faster]");
            }
            Sight.look(phone, "practice-before");
            tap("[data-begin]");
            beats(4);
            phone.executeScript("const end = performance.now() + 500; while (performance.now() < end);");
            List<?> at120 = beats(9);
            double first = ((Number) at120.get(0)).doubleValue();
            double most = 0;
            for (int k = 0; k < at120.size(); k++) {
                double off = Math.abs(((Number) at120.get(k)).doubleValue() - (first + k * 0.5));
                most = Math.max(most, off);
            }
            System.out.println("beats off the audio clock by at most " + most * 1000 + " ms, over " + at120.size());
            assertTrue(most <= 0.010, most + " s");
            tap("[data-up]");
            tap("[data-say=stepping-in]");
            Sight.look(phone, "practice-wind");
            for (String step : List.of("stopped", "backed-off", "off-meter")) {
                tap("[data-say=" + step + "]");
            }
            waitFor("kept out of every fit");
            Sight.look(phone, "practice-counts");
            tap(".counts button");
            waitFor("paced: kept out of fits");
            phone.get(at
                    + CalledForTests.value(
                            new Visitor(app.port(), "", 96)
                                    .get("/bench/motor/" + b1)
                                    .body(),
                            "(/bench/break-test/[^\"]+)\""));
            assertTrue(phone.findElement(By.id("breaktest")).getText().contains("supervising adult"));
            Sight.look(phone, "break-test");
        }
    }

    private List<?> beats(int least) {
        return new WebDriverWait(phone, Duration.ofSeconds(20)).until(b -> {
            var at = (List<?>) Objects.requireNonNull(phone.executeScript("return window.beatsAt"));
            return at.size() >= least ? at : null;
        });
    }

    private String text(String css) {
        return phone.findElement(By.cssSelector(css)).getText();
    }

    private void tap(String css) {
        Hand.tap(phone, By.cssSelector(css));
    }

    private void waitFor(String words) {
        Sight.waitFor(phone, "#winding", words);
    }
}
