package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.fault.CalledForTests;

/** One laptop, an empty folder and nobody joined: a day is set up and flown. */
@Timeout(120)
class PrepareBrowserIT {
    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);

    @TempDir
    Path root;

    private App app;

    private void waitFor(String selector, String words) {
        Sight.waitFor(laptop, selector, words);
    }

    private void press(String words) {
        Hand.press(laptop, By.cssSelector("button, a.button, a.step b"), words);
    }

    /** Opens a kind of thing from the overview, fills the form in as a person does, and saves it. */
    private void add(String step, String one, Map<String, String> fields) {
        laptop.get("http://localhost:" + app.port() + "/prepare");
        press(step);
        waitFor("h1", step);
        press("Add " + one);
        waitFor("#form h1", "New " + one);
        fields.forEach(this::fill);
        press("Save");
        waitFor("h1", step);
    }

    private void fill(String name, String value) {
        List<WebElement> boxes = laptop.findElements(By.cssSelector("input[type=checkbox][name='" + name + "']"));
        if (!boxes.isEmpty()) {
            List<String> wanted = List.of(value.split(" \\| "));
            boxes.stream()
                    .filter(box -> wanted.contains(box.getDomAttribute("value")))
                    .forEach(WebElement::click);
            return;
        }
        WebElement field = laptop.findElement(By.name(name));
        if (field.getTagName().equals("select")) {
            new Select(field).selectByVisibleText(value);
        } else {
            field.clear();
            field.sendKeys(value);
        }
    }

    @Test
    void a_coach_sets_a_day_up_and_flies_it_with_one_laptop_alone() throws Exception {
        app = Demo.startEmpty(root.resolve("day"));
        try (App open = app) {
            laptop.get("http://localhost:" + open.port() + "/");
            press("Prepare the day");
            waitFor("h1", "Prepare the first day");
            Sight.look(laptop, "prepare-empty");
            assertEquals("Events and rules next", first("li .step").replace("\n", " "));
            add("Events and rules", "event", Map.of("name", "Reed Cup", "kind", "hosting", "hall", "Reed Hall"));
            add("Models", "model", Map.of("model", "Reed One", "team", "Reed", "hook-distance", "9.5 in"));
            add("Batches", "batch", Map.of("batch", "A", "k", "42.6"));
            add(
                    "Motors",
                    "motor",
                    Map.of("tag", "A1", "batch", "A", "team", "Reed", "loop", "18.5 in", "mass", "1.6 g"));
            add("Crew", "person", Map.of("name", "Ines", "tasks", "winds | loads | releases | reads | times"));
            add(
                    "Entries",
                    "entry",
                    Map.of(
                            "entry",
                            "Curlew",
                            "team",
                            "Reed",
                            "own",
                            "yes",
                            "models",
                            "Reed One",
                            "motors",
                            "A1",
                            "winds",
                            "Ines"));
            add("Winding places", "winding place", Map.of("station", "Table"));
            waitFor("table", "Pull-test the mount");
            laptop.get("http://localhost:" + open.port() + "/prepare");
            waitFor("h1", "Reed Cup");
            Sight.look(laptop, "prepare-done");
            fly(open);
        }
    }

    private String first(String selector) {
        return laptop.findElement(By.cssSelector(selector)).getText();
    }

    private void fly(App open) throws Exception {
        laptop.get("http://localhost:" + open.port() + "/");
        waitFor("#now", "crank turns, then walk in");
        press("Call Curlew, attempt 1");
        waitFor("#now", "Start winding");
        CalledForTests.letWind(open.port());
        waitFor("#now", "answered for by");
        press("Start winding");
        waitFor("#now", "Wound");
        press("Wound");
        waitFor("#now", "Released");
        laptop.get("http://localhost:" + open.port() + "/timing");
        waitFor("#timing", "Which watch are you?");
        press("Watch 1");
        waitFor("#timing", "watch 1");
        Hand.tap(laptop, By.id("watch-target"));
        waitFor("[data-watch-kept]", "Saved");
        Sight.pastDoubleTap(laptop);
        Hand.tap(laptop, By.id("watch-target"));
        waitFor(".reading", "Saved: 0:");
        laptop.get("http://localhost:" + open.port() + "/");
        waitFor("#now", "Take the official time");
        laptop.findElements(By.id("why")).forEach(why -> why.sendKeys("One timekeeper today"));
        press("Take the official time");
        waitFor("#now", "attempt 2");
        laptop.get("http://localhost:" + open.port() + "/results");
        Sight.waitForTime(laptop, "#results");
    }

    @Test
    void a_preset_that_is_pressed_keeps_what_was_typed() throws Exception {
        app = Demo.startEmpty(root.resolve("preset"));
        try (App open = app) {
            laptop.get("http://localhost:" + open.port() + "/prepare/events/new");
            fill("name", "Reed Cup");
            fill("hall", "Reed Hall");
            fill("kind", "hosting");
            Hand.tap(laptop, By.cssSelector("details.presets summary"));
            press("Two watches, mean, whole seconds down; best two of six");
            new WebDriverWait(laptop, Duration.ofSeconds(15))
                    .ignoring(WebDriverException.class)
                    .until(b -> "6".equals(b.findElement(By.name("attempts")).getDomProperty("value")));
            assertEquals("Reed Cup", laptop.findElement(By.name("name")).getDomProperty("value"));
            assertEquals("Reed Hall", laptop.findElement(By.name("hall")).getDomProperty("value"));
            assertEquals("hosting", laptop.findElement(By.name("kind")).getDomProperty("value"));
            press("Save");
            waitFor(".saved", "Saved: Reed Cup.");
            press("Next: Terms");
            waitFor("h1", "Terms");
        }
    }

    @Test
    void files_are_looked_through_first_and_errors_stand_with_their_cells() throws Exception {
        app = Demo.startEmpty(root.resolve("files"));
        try (App open = app) {
            laptop.get("http://localhost:" + open.port() + "/import");
            Path wrong = Files.writeString(root.resolve("batches.csv"), "batch,k\nA,999\n");
            Hand.type(laptop, By.id("files"), wrong.toString());
            press("Look through them");
            waitFor("#looked", "Nothing was taken.");
            waitFor("#looked", "batches.csv line 2, column \"k\"");
            Sight.look(laptop, "import-wrong");
            laptop.navigate().refresh();
            StringBuilder demo = new StringBuilder();
            for (String name : List.of("event", "terms", "models", "batches", "motors", "crew", "entries", "windows")) {
                demo.append(demo.isEmpty() ? "" : "\n")
                        .append(Path.of("demo-data", name + ".csv").toAbsolutePath());
            }
            Hand.type(laptop, By.id("files"), demo.toString());
            press("Look through them");
            waitFor("#looked", "These files can be taken in.");
            waitFor("#looked", "motors.csv: 14 rows");
            press("Take them in");
            waitFor("#looked", "All of it is in the record now.");
            laptop.get("http://localhost:" + open.port() + "/prepare/motors");
            waitFor("table", "C5");
            assertTrue(Files.exists(root.resolve("files/journal.jsonl")));
        }
    }
}
