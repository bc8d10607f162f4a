package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.CodeOfDay;
import org.skeinday.Demo;

/** Joining where answers are lost, a device that looks at itself first, a laptop that is lent. */
@Timeout(90)
class JoinBrowserIT {
    /** The next form is taken by the server, and its answer never arrives. */
    private static final String LOSE_ONE_ANSWER = "const send = XMLHttpRequest.prototype.send;"
            + "XMLHttpRequest.prototype.send = function (body) {"
            + "  XMLHttpRequest.prototype.send = send;"
            + "  fetch('/join', { method: 'POST', credentials: 'omit', body,"
            + "    headers: { 'HX-Request': 'true', 'Content-Type': 'application/x-www-form-urlencoded' } })"
            + "    .then(() => this.dispatchEvent(new ProgressEvent('error')));"
            + "};";

    @TempDir
    Path root;

    private App app;
    private final ChromeDriver browser = Browsers.of(Browsers.Size.PHONE);

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
    }

    @AfterEach
    void stop() throws Exception {
        browser.manage().deleteAllCookies();
        app.close();
    }

    private String at(String path) {
        return "http://localhost:" + app.port() + path;
    }

    private long joined() throws Exception {
        return Files.readAllLines(root.resolve("day/journal.jsonl")).stream()
                .filter(line -> line.contains("\"device.joined\""))
                .count();
    }

    private void press(String css) {
        Hand.tap(browser, By.cssSelector(css));
    }

    private void pastJoining() {
        new WebDriverWait(browser, Duration.ofSeconds(10))
                .ignoring(WebDriverException.class)
                .until(b -> !String.valueOf(b.getCurrentUrl()).contains("/join"));
    }

    @Test
    void a_joining_whose_answer_is_lost_is_repeated_by_the_same_device() throws Exception {
        String link = at("/join") + app.joinLink().replaceFirst("[^#]*", "");
        browser.get(link);
        browser.executeScript(LOSE_ONE_ANSWER);
        press("button[value=helper]");
        Sight.waitFor(browser, "Press again: it counts once");
        assertEquals(1, joined());
        browser.get("about:blank");
        browser.get(link); // it was loaded anew: what the page knew is gone
        Sight.typeCode(browser, CodeOfDay.handedOut(app.port()));
        press("button[value=timekeeper]");
        pastJoining();
        assertEquals(1, joined(), "the same device again");
        assertEquals(true, browser.executeScript("return localStorage.getItem('skeinday-joining') === null"));
        browser.get(at("/"));
        assertTrue(browser.findElement(By.cssSelector(".who")).getText().contains("timekeeper"));
        browser.get(at("/join"));
        press("button[value=viewer]");
        pastJoining();
        assertEquals(1, joined());
        browser.get(at("/"));
        assertTrue(browser.findElement(By.cssSelector(".who")).getText().contains("viewer"));
    }

    @Test
    void a_device_looks_at_itself_before_it_joins() {
        browser.get(at("/hello"));
        for (String well : new String[] {"Script: well.", "Cookies: well.", "Storage: well.", "Clock: as the laptop"}) {
            Sight.waitFor(browser, well);
        }
        Sight.look(browser, "hello-well");
    }

    @Test
    void a_laptop_is_lent_and_taken_back() {
        browser.get(at("/devices"));
        Sight.touch(browser, b -> Sight.button(b, "Lend this laptop").click());
        Sight.waitFor(browser, "This laptop is lent");
        Sight.look(browser, "laptop-lent");
        takeBack("0");
        Sight.waitFor(browser, "That is not the coach's PIN");
        assertFalse(Sight.text(browser).contains("Lend this laptop"));
        takeBack(Demo.PIN);
        Sight.waitFor(browser, "Lend this laptop");
    }

    private void takeBack(String pin) {
        Sight.touch(browser, b -> {
            b.findElement(By.id("back-pin")).clear();
            b.findElement(By.id("back-pin")).sendKeys(pin);
        });
        Sight.touch(browser, b -> Sight.button(b, "Take the laptop back").click());
    }
}
