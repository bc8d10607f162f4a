package org.skeinday.browser;

import java.time.Duration;
import java.util.function.Predicate;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * What a person's hand does on a page that lives: it aims at what is there at that moment, and where a part was exchanged
 * just then, at the new one. Each deed is done once, or fails after {@value #PATIENCE_S} s.
 */
final class Hand {
    private static final int PATIENCE_S = 30;

    /** A second, and what the page needs to see that it has passed. */
    private static final int HOLD_MS = 1300;

    private Hand() {}

    static void tap(ChromeDriver browser, By what) {
        done(browser, String.valueOf(what), b -> {
            WebElement key = b.findElement(what);
            if (!key.isEnabled()) {
                return false; // nobody taps a dashed key: it is waited for
            }
            key.click();
            return true;
        });
    }

    /** Holds a key for as long as it asks. */
    static void hold(ChromeDriver browser, By what) {
        done(browser, "holding " + what, b -> {
            new Actions(b)
                    .clickAndHold(b.findElement(what))
                    .pause(Duration.ofMillis(HOLD_MS))
                    .release()
                    .perform();
            return true;
        });
    }

    /** Adds {@code words} to what a field holds; for a field of files their path. */
    static void type(ChromeDriver browser, By field, String words) {
        done(browser, String.valueOf(field), b -> {
            b.findElement(field).sendKeys(words);
            return true;
        });
    }

    /** Presses the button in sight with just these words. */
    static void press(ChromeDriver browser, String words) {
        press(browser, By.tagName("button"), words);
    }

    /** The same among {@code those}: links that look like buttons, for example. */
    static void press(ChromeDriver browser, By those, String words) {
        done(browser, "a button '" + words + "'", b -> {
            for (WebElement button : b.findElements(those)) {
                if (button.isDisplayed() && button.getText().equals(words)) {
                    button.click();
                    return true;
                }
            }
            return false;
        });
    }

    private static void done(ChromeDriver browser, String what, Predicate<ChromeDriver> deed) {
        new WebDriverWait(browser, Duration.ofSeconds(PATIENCE_S))
                .ignoring(WebDriverException.class)
                .withMessage(() -> what + " in " + Sight.words(browser, "body"))
                .until(b -> deed.test(browser));
    }
}
