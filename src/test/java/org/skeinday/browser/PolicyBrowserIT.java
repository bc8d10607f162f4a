package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;
import org.skeinday.App;
import org.skeinday.Await;
import org.skeinday.Demo;
import org.skeinday.cli.HostileDay;

/** That the watch over the policy sees what it is there for. */
@Timeout(60)
class PolicyBrowserIT {
    private static final List<String> PAGES = List.of(
            "/",
            "/day",
            "/bench",
            "/timing",
            "/results",
            "/desk",
            "/audit",
            "/evening",
            "/prepare",
            "/prepare/entries",
            "/prepare/crew",
            "/key-in",
            "/join",
            "/cards",
            "/log",
            "/search?q=script");

    @TempDir
    Path root;

    @Test
    void what_the_policy_stops_is_seen_and_does_not_run() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            ChromeDriver browser = Browsers.of(Browsers.Size.TABLET);
            browser.get("http://localhost:" + app.port() + "/");
            assertEquals(List.of(), Browsers.forbidden());
            for (String forbidden : List.of(
                    "const s = document.createElement('script'); s.textContent = 'window.ran = 1'; document.body.append(s)",
                    "document.body.insertAdjacentHTML('beforeend', '<p style=\"color:red\">x</p>')",
                    "document.body.insertAdjacentHTML('beforeend', '<img src=\"http://elsewhere.example/x.png\">')",
                    "fetch('http://elsewhere.example/').catch(() => {})")) {
                browser.executeScript(forbidden);
                int[] seen = {0};
                Await.until(
                        Duration.ofSeconds(5),
                        () -> (seen[0] += Browsers.forbidden().size()) > 0);
            }
            assertEquals(true, browser.executeScript("return window.ran === undefined"));
            Object elsewhere = browser.executeScript("return performance.getEntriesByType('resource')"
                    + ".map((e) => e.name).filter((name) => !name.startsWith(location.origin))"
                    + ".filter((name) => !name.startsWith('http://elsewhere.example')).join()");
            assertEquals("", elsewhere);
        }
    }

    /** Names that would run as script, markup or style where they were not escaped, on every kind of page. */
    @Test
    void nothing_that_somebody_typed_runs() throws Exception {
        try (App app = Demo.startEmpty(HostileDay.into(root.resolve("hostile")))) {
            ChromeDriver browser = Browsers.of(Browsers.Size.TABLET);
            int named = 0;
            for (String page : PAGES) {
                browser.get("http://localhost:" + app.port() + page);
                assertEquals(true, browser.executeScript("return window.ran === undefined"), page);
                assertEquals(
                        0L,
                        browser.executeScript(
                                "return document.querySelectorAll('main img, main script:not([src])').length"),
                        page);
                named += Sight.text(browser).contains("<script>window.ran=1</script>") ? 1 : 0;
            }
            assertTrue(named >= 5, "pages that show the name as text: " + named);
        }
    }
}
