package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;

/** What must hold on every page: the dark, a screen of 320 px (1280 at 400 %), fingers, the keyboard alone, a quiet voice. */
@Timeout(240)
class EveryScreenBrowserIT {
    private static final List<String> PAGES = List.of(
            "/",
            "/day",
            "/bench",
            "/checks",
            "/winding",
            "/timing",
            "/results",
            "/desk",
            "/audit",
            "/practice",
            "/evening",
            "/hall",
            "/prepare",
            "/prepare/motors",
            "/prepare/events/new",
            "/key-in",
            "/join",
            "/devices",
            "/people",
            "/export",
            "/import",
            "/guide",
            "/checks/lists",
            "/search?q=reed",
            "/bench/waits");

    /** A finger needs so much; words in a sentence are meant for reading first. */
    private static final double FINGER_PX = 44;

    /** How long a running watch is listened to: {@code -Dskeinday.listen=180000} for three minutes. */
    private static final long LISTEN_MS = Long.getLong("skeinday.listen", 5_000);

    @TempDir
    Path root;

    private App app;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        Visitor laptop = new Visitor(app.port(), "", 31);
        CalledForTests.call(laptop);
    }

    @AfterEach
    void stop() throws Exception {
        for (Browsers.Size size : List.of(Browsers.Size.LAPTOP, Browsers.Size.PHONE)) {
            Browsers.of(size)
                    .executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "", "features", List.of()));
            Browsers.of(size).executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
        }
        app.close();
    }

    private void open(ChromeDriver browser, String page) {
        browser.get("http://localhost:" + app.port() + page);
        browser.findElement(By.id("content"));
    }

    private static String name(String page) {
        return page.equals("/") ? "now" : page.substring(1).replaceAll("[^a-z]+", "-");
    }

    @Test
    void every_page_can_be_read_in_the_dark() {
        ChromeDriver browser = Browsers.of(Browsers.Size.LAPTOP);
        browser.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("media", "", "features", List.of(Map.of("name", "prefers-color-scheme", "value", "dark"))));
        for (String page : PAGES) {
            open(browser, page);
            Sight.look(browser, "dark-" + name(page));
        }
    }

    @Test
    void no_page_scrolls_sideways_at_320_px_and_every_key_is_as_large_as_a_finger() {
        ChromeDriver browser = Browsers.of(Browsers.Size.PHONE);
        for (String page : PAGES) {
            open(browser, page);
            browser.executeCdpCommand( // after the page has come: the driver puts its own screen back with each
                    "Emulation.setDeviceMetricsOverride",
                    Map.of("width", 320, "height", 640, "deviceScaleFactor", 1, "mobile", true));
            Browsers.shot(browser, "narrow-" + name(page));
            assertEquals(320L, browser.executeScript("return document.documentElement.scrollWidth"), page);
            assertEquals(List.of(), small(browser), page);
        }
    }

    /** Keys and fields in sight that are lower than a finger, with their words. */
    @SuppressWarnings("unchecked")
    private static List<String> small(ChromeDriver browser) {
        return (List<String>) browser.executeScript("""
                return [...document.querySelectorAll('button, .button, summary, select, input, textarea')]
                  .filter(e => e.checkVisibility() && !['hidden', 'checkbox', 'radio', 'file'].includes(e.type))
                  .filter(e => e.getBoundingClientRect().height < arguments[0] - 0.5)
                  .map(e => e.tagName + ' ' + (e.textContent || e.name).trim().slice(0, 40) + ' '
                      + Math.round(e.getBoundingClientRect().height));
                """, FINGER_PX);
    }

    @Test
    void the_keyboard_alone_reaches_every_key_and_shows_where_it_is() {
        ChromeDriver browser = Browsers.of(Browsers.Size.LAPTOP);
        for (String page : List.of("/", "/checks", "/timing", "/devices")) {
            open(browser, page);
            assertEquals(inSight(browser), visited(browser, page), page);
        }
    }

    @SuppressWarnings("unchecked")
    private static Set<String> inSight(ChromeDriver browser) {
        browser.executeScript("""
                [...document.querySelectorAll('a[href], button, summary, select, input, textarea')]
                  .filter(e => e.checkVisibility() && e.type !== 'hidden' && !e.disabled && !e.closest('.skip'))
                  .forEach((e, i) => e.setAttribute('data-reach', e.tagName.toLowerCase() + i));
                """);
        return new LinkedHashSet<>((List<String>) browser.executeScript(
                "return [...document.querySelectorAll('[data-reach]')].filter(e => e.type !== 'radio').map(e =>"
                        + " e.dataset.reach)"));
    }

    /** Tab after Tab until the first comes again; each must be marked. */
    private static Set<String> visited(ChromeDriver browser, String page) {
        Set<String> seen = new LinkedHashSet<>();
        for (int i = 0; i < 400; i++) {
            new Actions(browser).sendKeys(Keys.TAB).perform();
            WebElement now = browser.switchTo().activeElement();
            String mark = now.getDomAttribute("data-reach");
            if (mark == null) {
                if (!seen.isEmpty()) {
                    break; // past the last one
                }
                continue;
            }
            if (!seen.add(mark)) {
                break;
            }
            assertTrue(!now.getCssValue("outline-style").equals("none"), page + ": nothing marks " + mark);
        }
        return seen;
    }

    @Test
    void a_running_watch_says_nothing_by_itself() throws Exception {
        ChromeDriver browser = Browsers.of(Browsers.Size.PHONE);
        open(browser, "/timing");
        browser.executeScript("""
                window.spoken = 0;
                const live = '[aria-live], [role=status], [role=alert]';
                new MutationObserver(all => all.forEach(m => {
                  const at = m.target.nodeType === 1 ? m.target : m.target.parentElement;
                  const region = at?.closest(live);
                  if (region && region.getAttribute('aria-live') !== 'off') window.spoken++;
                })).observe(document.body, { childList: true, characterData: true, subtree: true });
                """);
        WebElement target = browser.findElement(By.cssSelector("[data-watch-target]"));
        target.click();
        Thread.sleep(3_000); // the press is told and saved; no condition tells that nothing more will be said
        assertTrue(spoken(browser) <= 6, "said at the press: " + spoken(browser));
        browser.executeScript("window.spoken = 0");
        Thread.sleep(LISTEN_MS);
        assertEquals(0, spoken(browser), "said in " + LISTEN_MS + " ms of a running watch");
    }

    private static int spoken(ChromeDriver browser) {
        return ((Number) browser.executeScript("return window.spoken")).intValue();
    }
}
