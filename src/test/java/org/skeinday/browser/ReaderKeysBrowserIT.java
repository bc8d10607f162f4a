package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.Rectangle;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;

/** The reader's keys stay where they are from the first crank turn on, and a break is held, by a finger or by the keyboard. */
@Timeout(120)
class ReaderKeysBrowserIT {
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);

    /** Stands in for a motor that a headless browser does not have. */
    private static final String COUNTS_PULSES =
            "window.pulses = 0; navigator.vibrate = () => { window.pulses += 1; return true; };";

    @TempDir
    Path root;

    @Test
    void no_key_moves_or_means_anything_else_and_only_a_held_one_says_broke() throws Exception {
        try (App app = Demo.startWithUndo(root.resolve("day"))) {
            Visitor captain = new Visitor(app.port(), "", 97);
            CalledForTests.callWithItsMotor(captain);
            CalledForTests.letWind(captain);
            phone.get("http://localhost:" + app.port() + "/winding");
            phone.executeScript(COUNTS_PULSES);
            tap("[data-begin]");
            tap("[data-up]");
            level("1");
            pulses(2);
            List<Rectangle> places = places();
            set("4");
            assertEquals(places, places());
            for (String step : List.of("stepping-in", "stopped", "backed-off")) {
                tap("[data-say=" + step + "]");
                Sight.waitFor(phone, "[data-say=" + step + "]", "✓");
                assertEquals(places, places(), step);
                assertEquals("+1 division\nneedle up one division", Sight.words(phone, "[data-up]"));
            }
            tap("[data-down]");
            long before = pulses();
            tap("[data-undo]");
            level("4");
            pulses(before + 1);
            heldByTheKeyboard();
        }
    }

    /** Whether a hand feels it is the device's; that it is asked for at each tap is the page's. */
    private long pulses() {
        return ((Number) phone.executeScript("return window.pulses")).longValue();
    }

    private void pulses(long wanted) {
        new WebDriverWait(phone, Duration.ofSeconds(20))
                .withMessage(() -> wanted + " pulses, but " + pulses())
                .until(b -> pulses() == wanted);
    }

    private void heldByTheKeyboard() {
        phone.executeScript("document.querySelector('[data-broke]').focus()");
        new Actions(phone).sendKeys(Keys.ENTER).perform();
        tap("[data-broke]"); // a short press of either is none
        level("4");
        assertFalse(Sight.words(phone, "body").contains("Check people"));
        phone.executeScript("document.querySelector('[data-broke]').focus()");
        new Actions(phone)
                .keyDown(Keys.ENTER)
                .pause(Duration.ofMillis(1300))
                .keyUp(Keys.ENTER)
                .perform();
        Sight.waitFor(phone, "#first", "Broke. Hands off. Check people.");
    }

    private void set(String division) {
        tap("[data-set]");
        tap("[data-pick='" + division + "']", "[data-typed]", division);
        level(division);
    }

    /** Picks it where it is offered, else types it. */
    private void tap(String pick, String field, String division) {
        if (phone.findElements(By.cssSelector(pick)).isEmpty()) {
            Hand.type(phone, By.cssSelector(field), division + Keys.ENTER);
        } else {
            tap(pick);
        }
    }

    private void level(String division) {
        new WebDriverWait(phone, Duration.ofSeconds(20))
                .ignoring(WebDriverException.class)
                .withMessage(() -> division + " in " + Sight.words(phone, "#winding"))
                .until(b -> b.findElement(By.cssSelector("output[data-level]"))
                        .getText()
                        .equals(division));
    }

    private List<Rectangle> places() {
        return new WebDriverWait(phone, Duration.ofSeconds(20))
                .ignoring(WebDriverException.class)
                .until(b -> b.findElements(By.cssSelector(".reader-keys button:not([data-undo])")).stream()
                        .map(key -> key.getRect())
                        .toList());
    }

    private void tap(String css) {
        Hand.tap(phone, By.cssSelector(css));
    }
}
