package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;

/** On a phone, upright or sideways, nothing that must be read lies under a key or outside the screen. */
@Timeout(180)
class UncoveredBrowserIT {
    /** What of the page's head lies under the keys while the page stands at its top. */
    private static final String COVERED = """
            const keys = document.querySelector(arguments[0]).getBoundingClientRect();
            return [...document.querySelectorAll('.bar > *, .bar a, .phases li, .meter > *, [data-phase], .wind-word, [data-watch] > *:not(.watch-hand)')]
                .filter(part => part.checkVisibility() && part.getClientRects().length)
                .filter(part => { const at = part.getBoundingClientRect();
                    return at.right > keys.left + 1 && at.left < keys.right - 1 && at.bottom > keys.top + 1 && at.top < keys.bottom - 1; })
                .map(part => part.className + ' ' + part.textContent.trim().slice(0, 40));
            """;

    @TempDir
    Path root;

    @Test
    void the_readers_keys_cover_neither_the_top_bar_nor_the_meter() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor captain = new Visitor(app.port(), "", 107);
            CalledForTests.callWithItsMotor(captain);
            CalledForTests.letWind(captain);
            ChromeDriver upright = Browsers.of(Browsers.Size.PHONE);
            upright.get("http://localhost:" + app.port() + "/winding");
            Hand.tap(upright, By.cssSelector("[data-begin]"));
            Sight.waitFor(upright, ".reader-keys", "+1 division");
            ChromeDriver sideways = Browsers.of(Browsers.Size.SIDEWAYS);
            sideways.get("http://localhost:" + app.port() + "/winding");
            Sight.waitFor(sideways, ".reader-keys", "+1 division");
            for (String step : List.of("stepping-in", "stopped", "backed-off")) {
                Hand.tap(upright, By.cssSelector("[data-say=" + step + "]"));
                Sight.waitFor(upright, "[data-say=" + step + "]", "✓");
                nothingCovered(upright, ".reader-keys", "upright " + step);
                sideways.navigate().refresh();
                Sight.waitFor(sideways, ".reader-keys", "+1 division");
                nothingCovered(sideways, ".reader-keys", "sideways " + step);
            }
        }
    }

    /** Keys that do not lie whole on the screen while the page stands at its top. */
    private static final String CUT = """
            scrollTo(0, 0);
            return [...document.querySelectorAll(arguments[0])]
                .filter(key => key.checkVisibility())
                .filter(key => { const at = key.getBoundingClientRect();
                    return at.top < 0 || at.left < 0 || at.bottom > innerHeight || at.right > innerWidth; })
                .map(key => key.textContent.trim());
            """;

    @Test
    void at_the_limit_the_last_turn_and_each_key_is_whole_on_a_phone_held_sideways() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor captain = new Visitor(app.port(), "", 109);
            CalledForTests.callWithItsMotor(captain);
            String attempt = CalledForTests.letWind(captain);
            captain.form(
                    "/winding/aim", Map.of("attempt", attempt, "launch", "0.05", "ceiling", "0.1", "unit", "in-ozf"));
            ChromeDriver sideways = Browsers.of(Browsers.Size.SIDEWAYS);
            sideways.get("http://localhost:" + app.port() + "/winding");
            Hand.tap(sideways, By.cssSelector("[data-begin]"));
            for (String level : List.of("1", "2")) {
                Hand.tap(sideways, By.cssSelector("[data-up]"));
                Sight.waitFor(sideways, "output[data-level]", level);
            }
            Sight.waitFor(sideways, ".wind-word", "torque limit");
            Browsers.shot(sideways, "keys-sideways-limit");
            assertEquals(List.of(), sideways.executeScript(CUT, ".reader-keys button, .wind-word, .meter > *"));
            nothingCovered(sideways, ".reader-keys", "sideways limit");
        }
    }

    @Test
    void each_key_of_a_watch_is_whole_on_a_phone_upright_or_sideways_and_the_hall_is_stopped_at_once()
            throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            CalledForTests.callWithItsMotor(new Visitor(app.port(), "", 110)); // the laptop is watch 1
            for (Browsers.Size size : List.of(Browsers.Size.PHONE, Browsers.Size.SIDEWAYS)) {
                ChromeDriver phone = Browsers.of(size);
                phone.get("http://localhost:" + app.port() + "/timing");
                Sight.waitFor(phone, "#watch-target", "Release");
                Browsers.shot(phone, "watch-" + size);
                assertEquals(List.of(), phone.executeScript(CUT, ".watch-hand button, .clock"), size.name());
                nothingCovered(phone, ".watch-hand", "watch " + size);
                phone.get("http://localhost:" + app.port() + "/");
                Sight.waitFor(phone, "#now", "Stop the hall");
                Browsers.shot(phone, "now-" + size);
                assertEquals(List.of(), phone.executeScript(CUT, ".stop-hall summary"), size.name());
                Hand.tap(phone, By.cssSelector(".stop-hall summary"));
                Sight.waitFor(phone, ".stop-hall", "Injury");
                Browsers.shot(phone, "stop-" + size);
            }
        }
    }

    @Test
    void where_the_attempt_stands_is_whole_beside_the_keys_of_a_watch_on_a_phone_held_sideways() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor captain = new Visitor(app.port(), "", 112);
            String attempt = CalledForTests.callWithItsMotor(captain);
            CalledForTests.letWind(captain, attempt);
            for (String to : List.of("winding", "holding", "released")) {
                captain.form("/attempt/move", Map.of("attempt", attempt, "to", to));
            }
            ChromeDriver sideways = Browsers.of(Browsers.Size.SIDEWAYS);
            sideways.get("http://localhost:" + app.port() + "/timing");
            Sight.waitFor(sideways, ".phases .now", "in the air");
            Browsers.shot(sideways, "watch-strip-sideways");
            assertEquals(true, sideways.executeScript("""
                    const right = (of) => document.querySelector(of).getBoundingClientRect().right;
                    return right('.phases .now') <= innerWidth - document.querySelector('.watch-hand').offsetWidth;
                    """));
        }
    }

    @Test
    void while_a_model_is_held_the_captains_keys_are_whole_on_a_phone_held_sideways() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor captain = new Visitor(app.port(), "", 111);
            String attempt = CalledForTests.callWithItsMotor(captain);
            captain.form("/attempt/move", Map.of("attempt", attempt, "to", "released"));
            captain.form("/attempt/aloft", Map.of("attempt", attempt, "to", "caught"));
            ChromeDriver sideways = Browsers.of(Browsers.Size.SIDEWAYS);
            sideways.get("http://localhost:" + app.port() + "/");
            Sight.waitFor(sideways, "Caught, held for");
            Browsers.shot(sideways, "now-caught-SIDEWAYS");
            assertEquals(
                    List.of(),
                    sideways.executeScript(CUT, "#to-landed button, #to-free button, #to-still-held button, .caught"));
        }
    }

    private static void nothingCovered(ChromeDriver driver, String keys, String when) {
        driver.executeScript("scrollTo(0, 0)");
        Browsers.shot(driver, "keys-" + when.replace(' ', '-'));
        assertEquals(List.of(), driver.executeScript(COVERED, keys), when);
    }

    @Test
    void the_score_of_the_sheet_is_seen_on_a_phone_without_scrolling() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
            phone.get("http://localhost:" + app.port() + "/results");
            Sight.waitFor(phone, "#results", "Curlew");
            // as wide as a day of long words and repeats makes it
            phone.executeScript("document.querySelectorAll('table.sheet td.number:not(:first-child):not(:last-child)')"
                    + ".forEach(cell => { cell.style.minWidth = '9rem'; })");
            assertEquals(
                    false,
                    phone.executeScript("const box = document.querySelector('.scroll');"
                            + " return box.scrollWidth > box.clientWidth"),
                    "nothing of it is scrolled sideways");
            Browsers.shot(phone, "sheet");
            Object beyond = phone.executeScript("""
                    return [...document.querySelectorAll('table.sheet tr > :last-child')]
                        .filter(cell => cell.getBoundingClientRect().right > innerWidth)
                        .map(cell => cell.textContent);
                    """);
            assertEquals(List.of(), beyond);
            assertTrue(phone.findElements(By.cssSelector("table.sheet tr > :last-child"))
                            .size()
                    > 1);
        }
    }
}
