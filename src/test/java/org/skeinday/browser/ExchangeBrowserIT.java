package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;

/** Files in and out, a history with columns of one's own, and a name that is erased. */
@Timeout(240)
class ExchangeBrowserIT {
    @TempDir
    Path root;

    private static String at(App app, String path) {
        return "http://localhost:" + app.port() + path;
    }

    @Test
    void every_page_of_files_and_people_fits_every_screen_and_breaks_no_rule_of_accessibility() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            for (Browsers.Size size : Browsers.few()) {
                ChromeDriver browser = Browsers.of(size);
                String name = "-" + size.name().toLowerCase(Locale.ROOT);
                for (String page : new String[] {"export", "people", "import", "import/history", "log"}) {
                    browser.get(at(app, "/" + page));
                    Sight.look(browser, page.replace('/', '-') + name);
                }
            }
        }
    }

    @Test
    void an_event_goes_as_a_bundle_to_another_laptop_and_a_bad_cell_is_named() throws Exception {
        Path bundle = root.resolve("event.json");
        Path bad = root.resolve("bad.json");
        try (App app = Demo.start(root.resolve("day"))) {
            String text = new Visitor(app.port(), "", 41).get("/export.json").body();
            Files.writeString(bundle, text);
            Files.writeString(bad, text.replaceFirst("\"kind\" : \"[a-z]+\"", "\"kind\" : \"party\""));
        }
        try (App other = Demo.startEmpty(root.resolve("other"))) {
            ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
            laptop.get(at(other, "/import"));
            Hand.type(laptop, By.id("files"), bad.toString());
            Sight.button(laptop, "Look through them").click();
            Sight.waitFor(laptop, "bad.json, event line 2, column \"kind\"");
            Sight.look(laptop, "import-refused");
            laptop.get(at(other, "/import"));
            Hand.type(laptop, By.id("files"), bundle.toString());
            Sight.button(laptop, "Take them in").click();
            Sight.waitFor(laptop, "All of it is in the record now.");
            laptop.get(at(other, "/prepare/motors"));
            assertTrue(Sight.text(laptop).contains("A1"), Sight.text(laptop));
        }
    }

    @Test
    void a_spreadsheet_of_ones_own_columns_is_explained_and_taken() throws Exception {
        Path mine = root.resolve("notebook.csv");
        Files.writeString(mine, "Day;Rubber;Winds;Seconds;Remark\n9.5.2026 10:00;A1;812;98.4;from the notebook\n");
        try (App app = Demo.start(root.resolve("day"))) {
            ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
            laptop.get(at(app, "/import/history"));
            Hand.type(laptop, By.cssSelector("input[type=file]"), mine.toString());
            Hand.tap(laptop, By.cssSelector("form button.primary"));
            Sight.waitFor(laptop, "What the columns mean");
            Sight.look(laptop, "history-mapping");
            ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
            phone.get(at(app, "/import/history"));
            Hand.type(phone, By.cssSelector("input[type=file]"), mine.toString());
            Hand.tap(phone, By.cssSelector("form button.primary"));
            Sight.waitFor(phone, "What the columns mean");
            Sight.look(phone, "history-mapping-phone");
        }
    }

    @Test
    void a_large_file_and_a_long_history_say_how_far_they_are() throws Exception {
        Path files = root.resolve("motors.csv");
        var motors = new StringBuilder("tag,batch,team,direction,loop (in),mass (g)\n");
        var flights = new StringBuilder("flown,event,model,motor,crank turns,ratio,time,valid\n");
        for (int i = 0; i < 20_000; i++) {
            String moment =
                    LocalDateTime.of(2026, 3, 1, 8, 0).plusMinutes(i).toString().replace('T', ' ');
            motors.append("M").append(i).append(",A,Reedbank Rotors,cw,18,1.6\n");
            flights.append(moment).append(",Saltmarsh Practice Evening,Reed One,A1,200,10,1:35.2,yes\n");
        }
        Files.writeString(files, motors);
        Path history = root.resolve("notebook.csv");
        Files.writeString(history, flights);
        for (Browsers.Size size : List.of(Browsers.Size.PHONE, Browsers.Size.LAPTOP)) {
            String name = "-" + size.name().toLowerCase(Locale.ROOT);
            try (App app = Demo.start(root.resolve("large" + name))) {
                ChromeDriver browser = Browsers.of(size);
                browser.get(at(app, "/import"));
                Hand.type(browser, By.id("files"), files.toString());
                Sight.button(browser, "Take them in").click();
                Sight.waitFor(browser, "#looked", "Every page can be read meanwhile");
                Sight.look(browser, "import-under-way" + name);
                Sight.waitFor(browser, "#looked", "All of it is in the record now.");
                Sight.look(browser, "import-done" + name);
                browser.get(at(app, "/import/history"));
                Hand.type(browser, By.cssSelector("input[type=file]"), history.toString());
                Hand.tap(browser, By.cssSelector("form button.primary"));
                Sight.waitFor(browser, "#history", "20000 rows can be taken in.");
                Sight.button(browser, "Take them in").click();
                Sight.waitFor(browser, "#history", "Every page can be read meanwhile");
                Sight.look(browser, "history-under-way" + name);
                Sight.waitFor(browser, "#history", "All of it is in the record now.");
                Demo.joined(app, "helper", "", 43);
                browser.get(at(app, "/devices"));
                Sight.look(browser, "devices-ending" + name);
            }
        }
    }

    @Test
    void a_name_is_erased_after_it_was_typed_again_and_goes_from_another_screen() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
            laptop.get(at(app, "/people"));
            String name = laptop.findElement(By.cssSelector(".person b")).getText();
            Hand.tap(laptop, By.cssSelector(".person summary"));
            Sight.button(laptop, "Erase this name").click();
            Sight.waitFor(laptop, "Type the name exactly");
            Sight.look(laptop, "people-refused");
            Hand.type(laptop, By.cssSelector(".person input[name=name]"), name);
            Sight.button(laptop, "Erase this name").click();
            Sight.waitFor(laptop, "The name is erased.");
            laptop.get(at(app, "/prepare/crew"));
            assertTrue(!Sight.text(laptop).contains(name), Sight.text(laptop));
        }
    }
}
