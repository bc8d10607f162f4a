package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.attempt.web.HostedDay;

/** A wall with more entries than it has room for, and the sheet of the same day on a phone. */
@Timeout(180)
class WallBrowserIT {
    private static final int ENTRIES = 29;

    @TempDir
    Path root;

    /** Which rows can be seen, by name; nothing of them may lie below the foot of the screen. */
    private static final String SEEN = """
            return [...document.querySelectorAll('table[data-pages] tbody tr')]
                .filter(row => !row.hidden)
                .map(row => row.getBoundingClientRect().bottom <= innerHeight ? row.cells[1].textContent : 'cut off');
            """;

    @Test
    void all_entries_come_by_page_after_page_and_none_is_cut_off() throws Exception {
        try (App app = Demo.startEmpty(
                HostedDay.into(root.resolve("day"), ENTRIES, 4, 20_260_509), Clock.systemDefaultZone())) {
            ChromeDriver wall = Browsers.of(Browsers.Size.LAPTOP);
            wall.get("http://localhost:" + app.port() + "/results/wall");
            Sight.waitFor(wall, "#results-wall", "Rows 1 to ");
            Sight.look(wall, "wall-of-many");
            var names = new TreeSet<String>();
            new WebDriverWait(wall, Duration.ofSeconds(90), Duration.ofMillis(20)).until(browser -> {
                for (Object name : (List<?>) wall.executeScript(SEEN)) {
                    names.add(String.valueOf(name));
                }
                return names.size() >= ENTRIES;
            });
            assertEquals(ENTRIES, names.size(), names.toString());
            assertTrue(!names.contains("cut off"), names.toString());
        }
    }

    @Test
    void the_sheet_of_many_attempts_is_whole_on_a_phone_and_a_tablet() throws Exception {
        try (App app = Demo.startEmpty(
                HostedDay.into(root.resolve("day"), ENTRIES, 4, 20_260_509), Clock.systemDefaultZone())) {
            for (Browsers.Size size : List.of(Browsers.Size.PHONE, Browsers.Size.TABLET, Browsers.Size.LAPTOP)) {
                ChromeDriver browser = Browsers.of(size);
                browser.get("http://localhost:" + app.port() + "/results");
                Sight.waitFor(browser, "#results", " leads");
                Sight.look(browser, "sheet-of-many-" + size);
                assertEquals(
                        List.of(),
                        browser.executeScript("return [...document.querySelectorAll('td.score')]"
                                + ".filter(cell => cell.getBoundingClientRect().right > innerWidth)"
                                + ".map(cell => cell.textContent)"),
                        "every score is seen without scrolling sideways at " + size);
                assertEquals(
                        ENTRIES,
                        browser.findElements(By.cssSelector("#results tbody tr"))
                                .size());
            }
        }
    }
}
