package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
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
import org.skeinday.platform.http.Pace;
import org.skeinday.prepare.FilledForms;

/** The captain plans on the laptop, two others see it: slip, proposal, taken; a change tried; what does not fit. */
@Timeout(180)
class DayPlanBrowserIT {

    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
    private final ChromeDriver tablet = Browsers.of(Browsers.Size.TABLET);
    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());

    @TempDir
    Path root;

    @Test
    void a_plan_is_taken_slips_and_is_taken_anew_before_the_eyes_of_two_others() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        try (App app = App.start(settings, clock, new SecureRandom())) {
            window(app, "Curlew", 5, 65);
            window(app, "Avocet", 70, 130);
            join(phone, app, "Ines");
            join(tablet, app, "Tomek");
            laptop.get(at(app, "/day"));
            Sight.look(laptop, "day-empty");
            press("Propose a plan");
            Sight.waitFor(laptop, "Proven: no plan has more time in hand");
            Sight.look(laptop, "day-proposal");
            press("Take this plan");
            for (ChromeDriver browser : new ChromeDriver[] {laptop, phone, tablet}) {
                Sight.waitFor(browser, "Every window is kept with at least");
                Sight.waitFor(browser, "Avocet 3 run back");
            }
            assertTrue(Sight.text(phone).contains("Yours"), "Ines loads: " + Sight.text(phone));
            Sight.look(phone, "day-phone");
            Sight.look(laptop, "day-taken");
            clock.stepBy(Duration.ofMinutes(12));
            laptop.navigate().refresh();
            Sight.waitFor(laptop, "later than planned");
            Sight.look(laptop, "day-slipped");
            press("Propose a plan");
            Sight.waitFor(laptop, " later, from ");
            press("Take this plan");
            Sight.waitFor(laptop, "Taken at");
            for (ChromeDriver browser : new ChromeDriver[] {laptop, phone, tablet}) {
                new WebDriverWait(browser, Duration.ofSeconds(15))
                        .ignoring(WebDriverException.class)
                        .until(b -> !Sight.text(browser).contains("later than planned"));
            }
            Sight.look(tablet, "day-tablet");
            Sight.touch(
                    laptop, b -> b.findElement(By.cssSelector(".try summary")).click());
            Sight.touch(
                    laptop,
                    b -> new Select(b.findElement(By.id("change")))
                            .selectByVisibleText("wind takes longer each time, by"));
            press("Try it");
            Sight.waitFor(laptop, "If wind takes longer each time, by 10 min");
            Sight.look(laptop, "day-tried");
            window(app, "Curlew", 5, 17);
            laptop.navigate().refresh();
            Sight.waitFor(laptop, "Since the plan was taken");
            press("Propose a plan");
            Sight.waitFor(laptop, "Does not fit:");
            Sight.touch(
                    laptop,
                    b -> b.findElement(By.cssSelector(".conflict summary")).click());
            Sight.look(laptop, "day-conflict");
        }
    }

    private void window(App app, String entry, int from, int to) throws Exception {
        new FilledForms(new Visitor(app.port(), "", from + to)).window(entry, clock, from, to);
    }

    private void join(ChromeDriver browser, App app, String person) {
        browser.get(app.joinLink());
        new Select(browser.findElement(By.id("person"))).selectByVisibleText(person);
        Hand.tap(browser, By.cssSelector("button[value=helper]"));
        new WebDriverWait(browser, Duration.ofSeconds(10))
                .ignoring(WebDriverException.class)
                .until(b -> !String.valueOf(b.getCurrentUrl()).contains("/join"));
        browser.get(app.invitation().address() + "/day"); // as the link names the laptop: there it has joined
        Sight.waitFor(browser, "There is no plan yet");
    }

    private static String at(App app, String path) {
        return "http://localhost:" + app.port() + path;
    }

    private void press(String words) {
        Hand.press(laptop, words);
    }
}
