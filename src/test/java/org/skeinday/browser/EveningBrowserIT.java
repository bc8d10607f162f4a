package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.review.web.FlownSeason;

/** The evening at every size: looked at, judged both ways, compared, three lines for next time, a new season, search. */
@Timeout(240)
class EveningBrowserIT {
    @TempDir
    Path root;

    private String at(App app, String path) {
        return "http://localhost:" + app.port() + path;
    }

    private static String attempt(Visitor laptop) throws Exception {
        String attempt = CalledForTests.call(laptop);
        for (String to : List.of("released", "landed")) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
        }
        return attempt;
    }

    @Test
    void every_page_of_the_evening_fits_every_screen_and_breaks_no_rule_of_accessibility() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            FlownSeason.into(app, 60, LocalDateTime.now().minusMinutes(30), 5);
            String attempt = attempt(new Visitor(app.port(), "", 51));
            for (Browsers.Size size : Browsers.few()) {
                ChromeDriver browser = Browsers.of(size);
                String name = "-" + size.name().toLowerCase(Locale.ROOT);
                look(browser, app, "/evening", "evening-last" + name);
                look(browser, app, "/evening?look=season:" + season(browser), "evening-season" + name);
                Browsers.shot(browser, "evening-season-top" + name);
                browser.executeScript("document.querySelector('.charts').scrollIntoView()");
                Browsers.shot(browser, "evening-charts" + name);
                browser.executeScript("document.querySelector('#flights').scrollIntoView()");
                Browsers.shot(browser, "evening-flights" + name);
                look(browser, app, "/evening/flight/" + attempt, "evening-flight" + name);
                look(browser, app, "/evening/season?first=2099-09-01&months=12", "evening-new-season" + name);
                look(browser, app, "/search?q=reed", "search" + name);
                look(browser, app, "/prepare", "prepare-evening" + name);
            }
        }
    }

    private static String season(ChromeDriver browser) {
        return browser.findElements(By.cssSelector("#look option")).stream()
                .map(o -> String.valueOf(o.getDomAttribute("value")))
                .filter(v -> v.startsWith("season:"))
                .findFirst()
                .orElseThrow()
                .substring("season:".length());
    }

    private void look(ChromeDriver browser, App app, String path, String name) {
        browser.get(at(app, path));
        browser.findElement(By.id("content"));
        Sight.look(browser, name);
    }

    @Test
    void a_coach_judges_compares_and_writes_down_what_to_change() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
            String attempt = attempt(new Visitor(app.port(), "", 52));
            laptop.get(at(app, "/evening/flight/" + attempt));
            Hand.type(laptop, By.id("spoilt"), "touched a beam");
            Hand.type(laptop, By.id("contact"), "0:12");
            Sight.button(laptop, "Leave it out").click();
            Sight.waitFor(laptop, "left out: touched a beam");
            Sight.look(laptop, "evening-judged");
            Sight.button(laptop, "It counts after all").click();
            Sight.waitFor(laptop, "It enters averages");
            laptop.get(at(app, "/evening"));
            List<WebElement> lines = laptop.findElements(By.name("line"));
            assertEquals(3, lines.size());
            lines.get(0).sendKeys("Lubricate the evening before");
            Sight.button(laptop, "Keep these lines").click();
            Sight.waitFor(laptop, "Saved. It is shown where the next event is prepared.");
            Hand.type(laptop, By.id("q"), "lubricate");
            Sight.button(laptop, "Search").click();
            Sight.waitFor(laptop, "change next time");
            laptop.get(at(app, "/evening?look=model:" + model(laptop, app)));
            List<WebElement> boxes = laptop.findElements(By.name("flight"));
            boxes.get(0).click();
            boxes.get(1).click();
            Sight.button(laptop, "Side by side").click();
            Sight.waitFor(laptop, "differs");
            Sight.look(laptop, "evening-compare");
            assertTrue(Sight.text(laptop).contains("launch torque"));
        }
    }

    private String model(ChromeDriver laptop, App app) {
        laptop.get(at(app, "/evening"));
        return laptop.findElements(By.cssSelector("#look option")).stream()
                .map(o -> String.valueOf(o.getDomAttribute("value")))
                .filter(v -> v.startsWith("model:"))
                .findFirst()
                .orElseThrow()
                .substring("model:".length());
    }
}
