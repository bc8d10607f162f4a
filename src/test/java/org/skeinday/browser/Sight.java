package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementNotInteractableException;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.Program;

/** What must hold of every page in every state and at every size. */
final class Sight {
    private static final Pattern OF_A_FLIGHT = Pattern.compile("(?<!\\d)0:[0-5]\\d\\.\\d");

    private Sight() {}

    /** Until the watch has run longer than a double tap, which it would swallow. */
    static void pastDoubleTap(ChromeDriver browser) {
        new WebDriverWait(browser, Duration.ofSeconds(10))
                .ignoring(WebDriverException.class)
                .until(b -> b.findElement(By.cssSelector("[data-watch-clock]"))
                                .getText()
                                .compareTo("0:00.4")
                        > 0);
    }

    /** As a finger does it, which holds no element: where the part was swapped just then, the new one is meant. */
    static void touch(ChromeDriver browser, Consumer<ChromeDriver> deed) {
        new WebDriverWait(browser, Duration.ofSeconds(10))
                .ignoring(StaleElementReferenceException.class, ElementNotInteractableException.class)
                .until(b -> {
                    deed.accept(browser);
                    return true;
                });
    }

    /** The button in sight with just these words. */
    static WebElement button(ChromeDriver browser, String words) {
        return browser.findElements(By.tagName("button")).stream()
                .filter(b -> b.isDisplayed() && b.getText().equals(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError("No button '" + words + "' in " + text(browser)));
    }

    /** What the page says. */
    static String text(ChromeDriver browser) {
        return new WebDriverWait(browser, Duration.ofSeconds(5))
                .ignoring(WebDriverException.class)
                .until(b -> b.findElement(By.tagName("main")).getText());
    }

    /** What a part says at this moment; that it is missing, where it is. */
    static String words(ChromeDriver browser, String selector) {
        try {
            return browser.findElement(By.cssSelector(selector)).getText();
        } catch (WebDriverException e) { // swapped just then, or not there: never a reason to hide what was waited for
            return "(no " + selector + ")";
        }
    }

    /** Until this part of the page says so. */
    static void waitFor(ChromeDriver browser, String selector, String words) {
        new WebDriverWait(browser, Duration.ofSeconds(30))
                .withMessage(() -> "'" + words + "' in " + words(browser, selector) + " of " + words(browser, "body"))
                .until(b -> words(browser, selector).contains(words));
    }

    /** Until a time of less than a minute stands there: how long a flight of a test takes is for the machine to say. */
    static void waitForTime(ChromeDriver browser, String selector) {
        new WebDriverWait(browser, Duration.ofSeconds(30))
                .ignoring(WebDriverException.class)
                .withMessage(() -> "a time in " + words(browser, selector))
                .until(b -> OF_A_FLIGHT.matcher(words(browser, selector)).find());
    }

    /** Until the page says so. */
    static void waitFor(ChromeDriver browser, String words) {
        new WebDriverWait(browser, Duration.ofSeconds(20))
                .ignoring(WebDriverException.class)
                .withMessage(() -> "'" + words + "' in " + text(browser))
                .until(b -> text(browser).contains(words));
    }

    /** Until this part of the page does not say so any more. */
    static void waitGoneFrom(ChromeDriver browser, String selector, String words) {
        new WebDriverWait(browser, Duration.ofSeconds(30))
                .withMessage(() -> "no '" + words + "' in " + words(browser, selector))
                .until(b -> !words(browser, selector).contains(words));
    }

    /** Until the page does not say so any more. */
    static void waitGone(ChromeDriver browser, String words) {
        new WebDriverWait(browser, Duration.ofSeconds(20))
                .ignoring(WebDriverException.class)
                .withMessage(() -> "no '" + words + "' in " + text(browser))
                .until(b -> !text(browser).contains(words));
    }

    /** Types a code on the page Join, once the crew stands there: the form comes anew with it. */
    static void typeCode(ChromeDriver browser, String code) {
        new WebDriverWait(browser, Duration.ofSeconds(20))
                .ignoring(WebDriverException.class)
                .until(b -> b.findElements(By.cssSelector("#person option")).size() > 1);
        browser.executeScript( // on the laptop the form is folded away
                "document.getElementById('code').closest('details')?.setAttribute('open', '')");
        Hand.type(browser, By.id("code"), code);
    }

    /** A device joins by the link as this person in this role, and is past the join page when this comes back. */
    static void join(ChromeDriver browser, Program program, String person, String role) {
        browser.get(program.joinLink());
        new Select(browser.findElement(By.id("person"))).selectByVisibleText(person);
        Hand.tap(browser, By.cssSelector("button[value=" + role + "]"));
        new WebDriverWait(browser, Duration.ofSeconds(10))
                .ignoring(WebDriverException.class)
                .until(b -> !Objects.requireNonNull(b.getCurrentUrl()).contains("/join"));
    }

    /** No page is wider than its screen, none breaks a rule of accessibility; a picture of it under -Dshots. */
    static void look(ChromeDriver browser, String name) {
        Browsers.shot(browser, name);
        Object fits = browser.executeScript(
                "return document.documentElement.scrollWidth <= document.documentElement.clientWidth");
        assertEquals(true, fits, name + " is wider than its screen");
        assertEquals("", Axe.broken(browser), name);
    }
}
