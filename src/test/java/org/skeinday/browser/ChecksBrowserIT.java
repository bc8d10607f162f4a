package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;

/** Two people on one list at once, an interruption, the gate, and the winding place drawn from above. */
@Timeout(300)
class ChecksBrowserIT {
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
    private final ChromeDriver tablet = Browsers.of(Browsers.Size.TABLET);
    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());

    /** Each list that comes, and whether its keys can be tapped at that moment. */
    private static final String NOTES_LISTS = """
            window.noted = [];
            document.addEventListener('skeinday:fresh', () => window.noted.push(
                document.querySelector('[data-walk]')?.dataset.walk.split(' ')[0]
                    + ' ' + document.querySelector('.ticks')?.inert));
            """;

    @TempDir
    Path root;

    private App app;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
    }

    @AfterEach
    void stop() throws Exception {
        phone.manage().deleteAllCookies();
        tablet.manage().deleteAllCookies();
        app.close();
    }

    @Test
    void two_go_through_one_list_at_once_are_interrupted_and_go_on() {
        join(phone, "Ayla");
        join(tablet, "Ines");
        phone.get(at("/checks"));
        tablet.get(at("/checks"));
        Sight.look(phone, "checks-first-phone");
        Sight.look(tablet, "checks-first");
        tick(tablet, "Done: Venue");
        Sight.waitFor(phone, "Ines ");
        tick(phone, "Done: Models out");
        Sight.waitFor(tablet, "Ayla ");
        Sight.touch(phone, b -> b.findElement(box("Take back: Models out")).click());
        waitOpen(tablet, "Done: Models out");
        tick(phone, "Done: Models out");
        Sight.look(phone, "checks-ticked-phone");
        clock.stepBy(Duration.ofMinutes(7));
        tablet.navigate().refresh();
        Sight.waitFor(tablet, "Away for 7 min");
        Sight.look(tablet, "checks-resumed");
        tick(tablet, "Done: Venue");
        tick(tablet, "Done: Hall looked over");
        phone.executeScript(NOTES_LISTS);
        leaveOut(tablet, "no thermometer here");
        Sight.waitFor(phone, "Arrival and unpacking is done.");
        Sight.waitFor(phone, "Mount pulled");
        theNextListIsStillForASecond();
        Sight.look(phone, "checks-place-phone");
        aRefusedValueStaysBesideItsFieldAndIsMended();
        Sight.touch(
                tablet,
                b -> b.findElement(By.partialLinkText("Arrival and unpacking is done"))
                        .click());
        Sight.waitFor(tablet, "left out: no thermometer here");
        Sight.look(tablet, "checks-done");
    }

    /** It opens under the finger that ticked the last item of the one before. */
    private void theNextListIsStillForASecond() {
        Object noted = phone.executeScript("return window.noted");
        assertTrue(String.valueOf(noted).contains("winding-place true"), String.valueOf(noted));
        new WebDriverWait(phone, Duration.ofSeconds(15))
                .ignoring(WebDriverException.class)
                .until(b -> Boolean.FALSE.equals(phone.executeScript("return document.querySelector('.ticks').inert")));
    }

    /** The person who typed it reads why at once: it is nothing to look at on every page from then on. */
    private void aRefusedValueStaysBesideItsFieldAndIsMended() {
        Sight.touch(phone, b -> b.findElement(By.id("answer-mount-pulled")).sendKeys("eight"));
        Sight.touch(
                phone,
                b -> b.findElement(By.cssSelector("#item-mount-pulled .tick-value button"))
                        .click());
        Sight.waitFor(phone, "Not saved: 'eight' is no number");
        nothingToLookAt();
        assertEquals("eight", phone.findElement(By.id("answer-mount-pulled")).getDomProperty("value"));
        Sight.touch(phone, b -> {
            b.findElement(By.id("answer-mount-pulled")).clear();
            b.findElement(By.id("answer-mount-pulled")).sendKeys("60");
            b.findElement(By.cssSelector("#item-mount-pulled .tick-value button"))
                    .click();
        });
        Sight.waitFor(phone, "60 · ");
        assertFalse(Sight.text(phone).contains("Not saved"), Sight.text(phone));
        nothingToLookAt();
    }

    /** The line says for a moment that a tap is on its way; an entry to look at would stay there. */
    private void nothingToLookAt() {
        new WebDriverWait(phone, Duration.ofSeconds(15))
                .withMessage(() -> phone.findElement(By.id("connection-line")).getText())
                .until(b -> !b.findElement(By.id("connection-line")).isDisplayed());
    }

    @Test
    void the_gate_says_what_is_open_where_to_tick_it_and_lets_the_adult_answer() throws Exception {
        CalledForTests.callOnly(new Visitor(app.port(), "", 95));
        laptop.get(at("/"));
        Sight.waitFor(laptop, "Winding waits for");
        Sight.look(laptop, "gate-now");
        tablet.get(at("/winding"));
        phone.get(at("/checks"));
        Sight.look(phone, "gate-checks-phone");
        Hand.tap(laptop, By.cssSelector(".gate-pass summary"));
        Hand.type(laptop, By.id("adult"), "Mrs Grebe");
        Hand.type(laptop, By.id("passed"), "looked at all of it myself");
        Sight.look(laptop, "gate-open");
        Sight.button(laptop, "Record it").click();
        Sight.waitFor(laptop, "Mrs Grebe: looked at all of it myself");
        Sight.waitFor(laptop, "There is no override for eyes and line");
        assertTrue(laptop.findElements(By.cssSelector(".gate-pass")).isEmpty(), "nothing is left to answer for");
        Sight.waitFor(phone, "Supervising adult is here");
        Sight.look(phone, "checks-before-winding-phone");
        Hand.tap(phone, box("Done: Nobody but the winder in line"));
        Sight.waitFor(phone, "Not saved: The line comes last, just before winding. Before it: \u201cEye protection on");
        nothingToLookAt();
        Sight.look(phone, "checks-line-first-phone");
        tick(phone, "Done: Eye protection on");
        tick(phone, "Done: Nobody but the winder in line");
        Sight.waitGone(laptop, "Winding waits for");
        assertFalse(Sight.text(laptop).contains("Winding waits for"));
        Sight.touch(laptop, b -> Sight.button(b, "Start winding").click());
        Sight.waitFor(laptop, "Wound");
        Sight.waitFor(phone, "Nothing is asked between the first crank turn and the release.");
        Sight.look(phone, "checks-quiet-phone");
    }

    @Test
    void a_winding_place_is_measured_drawn_and_mended() {
        laptop.get(at("/hall"));
        Sight.look(laptop, "hall-empty");
        fill(
                laptop,
                Map.of("hall-name", "Saltmarsh Hall", "lane", "lane by the door", "length", "4 m", "past", "1.5 m"));
        fill(laptop, Map.of("name0", "stand one", "first0", "1 m", "second0", "1.1 m"));
        thing(laptop, 1, "reader", "Ayla", "0.5 m", "1.6 m");
        thing(laptop, 2, "launch", "launch", "6 m", "2.5 m");
        fill(laptop, Map.of("drift", "2", "speed", "0.2"));
        press(laptop, "Keep this place");
        Sight.waitFor(laptop, "stand one is 100 mm too close");
        Sight.look(laptop, "hall-too-close");
        phone.get(at("/hall"));
        Sight.look(phone, "hall-phone");
        tablet.get(at("/hall"));
        Sight.look(tablet, "hall-tablet");
        fill(laptop, Map.of("second0", "1.2 m"));
        press(laptop, "Keep these numbers");
        Sight.waitFor(laptop, "Nothing is too close.");
        Sight.waitFor(phone, "Nothing is too close.");
        Sight.look(laptop, "hall-clear");
        laptop.get(at("/"));
        Sight.waitFor(laptop, "launch spot");
        Sight.look(laptop, "now-with-air");
    }

    @Test
    void lists_are_read_on_paper_and_worded_anew() {
        laptop.get(at("/checks/lists"));
        Sight.look(laptop, "lists");
        laptop.get(at("/checks/lists/arrival"));
        Sight.look(laptop, "list-form");
        phone.get(at("/checks/lists/arrival"));
        Sight.look(phone, "list-form-phone");
        var title = laptop.findElement(By.id("title"));
        title.clear();
        title.sendKeys("Arrival, our way");
        press(laptop, "Save as revision 2");
        Sight.waitFor(laptop, "Arrival, our way");
        laptop.get(at("/checks/print"));
        assertTrue(Sight.text(laptop).contains("Arrival, our way"));
        Sight.look(laptop, "lists-on-paper");
    }

    private static void press(ChromeDriver browser, String words) {
        Sight.touch(browser, b -> {
            var button = Sight.button(b, words);
            b.executeScript("arguments[0].scrollIntoView({block: 'center'})", button);
            button.click();
        });
    }

    private static void fill(ChromeDriver browser, Map<String, String> fields) {
        fields.forEach((id, text) -> {
            var field = browser.findElement(By.id(id));
            field.clear();
            field.sendKeys(text);
        });
    }

    private static void thing(ChromeDriver browser, int row, String kind, String name, String first, String second) {
        new Select(browser.findElement(By.id("kind" + row))).selectByValue(kind);
        fill(browser, Map.of("name" + row, name, "first" + row, first, "second" + row, second));
    }

    private static By box(String label) {
        return By.xpath("//button[starts-with(@aria-label, '" + label + "')]");
    }

    /** A part that comes fresh just then carries the box away from under the pointer: aimed at again while no tap is told. */
    private static void tick(ChromeDriver browser, String label) {
        waitOpen(browser, label);
        new WebDriverWait(browser, Duration.ofSeconds(30))
                .ignoring(WebDriverException.class)
                .pollingEvery(Duration.ofSeconds(1))
                .until(b -> {
                    var open = b.findElements(box(label));
                    if (open.isEmpty()) {
                        return true;
                    }
                    var told = open.get(0).findElement(By.xpath("ancestor::article//*[@data-tap-words]"));
                    if (told.getText().isEmpty()) {
                        open.get(0).click();
                    }
                    return false;
                });
    }

    private static void waitOpen(ChromeDriver browser, String label) {
        new WebDriverWait(browser, Duration.ofSeconds(15))
                .ignoring(WebDriverException.class)
                .until(b -> b.findElement(box(label)).isDisplayed());
    }

    /** A part that grows just then may carry the button away from under the pointer: it is aimed at again, as a hand would. */
    private static void leaveOut(ChromeDriver browser, String reason) {
        By open = By.xpath("//summary[starts-with(@aria-label, 'Leave out: Motors warm')]");
        new WebDriverWait(browser, Duration.ofSeconds(30))
                .ignoring(WebDriverException.class)
                .until(b -> {
                    if (b.findElements(open).isEmpty()) {
                        return true;
                    }
                    leaveOutOnce(browser, open, reason);
                    return false;
                });
    }

    private static void leaveOutOnce(ChromeDriver browser, By open, String reason) {
        var field = browser.findElement(By.id("skip-motors-warm"));
        if (!field.isDisplayed()) {
            browser.findElement(open).click();
        }
        field.clear();
        field.sendKeys(reason);
        browser.findElement(By.cssSelector("#item-motors-warm details button")).click();
    }

    private void join(ChromeDriver browser, String person) {
        browser.get(at("/join") + app.joinLink().replaceFirst("[^#]*", ""));
        new Select(browser.findElement(By.id("person"))).selectByVisibleText(person);
        Hand.tap(browser, By.cssSelector("button[value=helper]"));
        new WebDriverWait(browser, Duration.ofSeconds(10))
                .ignoring(WebDriverException.class)
                .until(b -> !Objects.requireNonNull(b.getCurrentUrl()).contains("/join"));
    }

    private String at(String path) {
        return "http://localhost:" + app.port() + path;
    }
}
