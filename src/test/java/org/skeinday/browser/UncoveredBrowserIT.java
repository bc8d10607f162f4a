package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
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
    /** What of the page's head lies under the reader's keys while the page stands at its top. */
    private static final String COVERED = """
            const keys = document.querySelector('.reader-keys').getBoundingClientRect();
            return [...document.querySelectorAll('.bar > *, .bar a, .phases li, .meter > *, [data-phase], .wind-word')]
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
                nothingCovered(upright, "upright " + step);
                sideways.navigate().refresh();
                Sight.waitFor(sideways, ".reader-keys", "+1 division");
                nothingCovered(sideways, "sideways " + step);
            }
        }
    }

    private static void nothingCovered(ChromeDriver driver, String when) {
        driver.executeScript("scrollTo(0, 0)");
        Browsers.shot(driver, "keys-" + when.replace(' ', '-'));
        assertEquals(List.of(), driver.executeScript(COVERED), when);
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
                    true,
                    phone.executeScript("const box = document.querySelector('.scroll');"
                            + " return box.scrollWidth > box.clientWidth"),
                    "the sheet is too wide for the screen");
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
