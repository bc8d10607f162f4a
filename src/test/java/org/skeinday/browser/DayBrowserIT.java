package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.CodeOfDay;
import org.skeinday.Program;
import org.skeinday.fault.CalledForTests;

/** The whole story in three windows: the laptop and two phones. */
@Timeout(180)
class DayBrowserIT {
    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
    private final ChromeDriver first = Browsers.of(Browsers.Size.PHONE);
    private final ChromeDriver second = Browsers.of(Browsers.Size.TABLET);

    @TempDir
    Path folder;

    @Test
    void a_day_is_brought_in_flown_timed_and_still_there_after_a_kill() throws Exception {
        Path data = folder.resolve("day");
        assertEquals(0, Program.run("import", ownFiles().toString(), "--data", data.toString()));
        int port = Program.freePort();
        String sheet;
        Program program = Program.serve(data, port);
        try {
            join(program, first, "Mattis");
            join(program, second, "Oda");
            callWithAChosenMotor(program);
            timeOnBothPhones();
            sheet = takeTheOfficialTime(program);
        } finally {
            program.kill();
        }
        try (Program again = Program.serve(data, port)) {
            laptop.get(again.at("/results"));
            assertEquals(sheet, text(laptop, "#results"));
            Browsers.shot(laptop, "results-after-kill");
        }
        assertEquals(0, Program.run("verify", "--data", data.toString()));
    }

    private void join(Program program, ChromeDriver phone, String name) throws Exception {
        phone.get(program.joinLink());
        new Select(phone.findElement(By.id("person"))).selectByVisibleText(name);
        Sight.typeCode(phone, CodeOfDay.handedOut(program.port()));
        Sight.look(phone, "join");
        Hand.tap(phone, By.cssSelector("button[value=timekeeper]"));
        waitFor(phone, "#timing", "as soon as the captain calls");
        Sight.look(phone, "timing-before");
    }

    private void callWithAChosenMotor(Program program) throws Exception {
        laptop.get(program.at("/"));
        Sight.look(laptop, "now-before");
        String planOfFirst = text(laptop, "#plan");
        assertTrue(planOfFirst.contains("turns limit"), planOfFirst);
        Sight.touch(laptop, b -> new Select(b.findElement(By.id("motor"))).selectByIndex(2));
        new WebDriverWait(laptop, Duration.ofSeconds(10))
                .until(b -> !text(laptop, "#plan").equals(planOfFirst));
        String motor = laptop.findElement(By.cssSelector("#plan dd")).getText();
        Sight.touch(laptop, b -> button(b, "Call Curlew, attempt 1").click());
        waitFor(laptop, "#now", "Start winding");
        assertTrue(text(laptop, "#plan").contains(motor), "the chosen motor is called: " + motor);
        assertTrue(text(laptop, "#now").contains("Winding waits for"));
        Sight.look(laptop, "now-called");
        CalledForTests.letWind(java.net.URI.create(program.at("/")).getPort());
        waitFor(laptop, "#now", "answered for by");
        Sight.touch(laptop, b -> button(b, "Start winding").click());
        waitFor(laptop, "#now", "Wound");
        Sight.touch(laptop, b -> button(b, "Wound").click());
        waitFor(laptop, "#now", "Released");
        Sight.look(laptop, "now-holding");
    }

    private void timeOnBothPhones() throws Exception {
        waitFor(first, "#timing", "Which watch are you?");
        Sight.look(first, "timing-choose");
        Sight.touch(first, b -> button(b, "Watch 1").click());
        waitFor(first, "#timing", "watch 1");
        waitFor(second, "#timing", "taken by Mattis");
        Sight.touch(second, b -> button(b, "Watch 2").click());
        waitFor(second, "#timing", "watch 2");
        waitFor(laptop, "#now", "0 of 2 ready; 2 are taken");
        Sight.touch(first, b -> button(b, "I am ready").click());
        Sight.touch(second, b -> button(b, "I am ready").click());
        waitFor(laptop, "#now", "2 of 2 ready");
        Sight.look(first, "timing-ready");
        press(first);
        press(second);
        waitFor(laptop, "#now h1 .state", "in the air");
        waitFor(first, "[data-watch-kept]", "Saved");
        Sight.look(first, "timing-air");
        new WebDriverWait(first, Duration.ofSeconds(15))
                .until(b -> !text(first, "[data-watch-clock]").startsWith("0:00"));
        press(first);
        press(second);
        waitFor(second, "[data-watch-kept]", "Saved");
        waitFor(laptop, "#now", "Take the official time");
        new WebDriverWait(laptop, Duration.ofSeconds(10))
                .until(b -> text(laptop, "#now").matches("(?s).*1: 0:\\d\\d.*2: 0:\\d\\d.*"));
        Sight.look(first, "timing-down");
        Sight.look(laptop, "now-landed");
    }

    private String takeTheOfficialTime(Program program) throws IOException {
        laptop.findElements(By.id("why")).forEach(why -> why.sendKeys("two hands on a slow machine"));
        Sight.touch(laptop, b -> button(b, "Take the official time").click());
        waitFor(laptop, "#now", "Curlew, attempt 2");
        Sight.look(laptop, "now-after");
        laptop.get(program.at("/results"));
        Sight.look(laptop, "results");
        String sheet = text(laptop, "#results");
        assertTrue(sheet.contains("Curlew, attempt 1") && sheet.contains("longer 0:"), sheet);
        return sheet;
    }

    /** A press as a finger makes it: pointer down first. */
    private static void press(ChromeDriver phone) {
        Sight.touch(
                phone, b -> b.findElement(By.cssSelector("[data-watch-target]")).click());
    }

    private static WebElement button(ChromeDriver browser, String words) {
        return browser.findElements(By.tagName("button")).stream()
                .filter(b -> b.isDisplayed() && b.getText().equals(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError("No button '" + words + "' in " + text(browser, "main")));
    }

    private static String text(ChromeDriver browser, String selector) {
        return new WebDriverWait(browser, Duration.ofSeconds(5))
                .ignoring(StaleElementReferenceException.class) // a live change may come between finding and reading
                .until(b -> b.findElement(By.cssSelector(selector)).getText());
    }

    private static void waitFor(ChromeDriver browser, String selector, String words) {
        Sight.waitFor(browser, selector, words);
    }

    /** The invented event as a coach's spreadsheet would hold it today: the first window is open. */
    private Path ownFiles() throws IOException {
        Path own = Files.createDirectories(folder.resolve("files"));
        try (Stream<Path> files = Files.list(Path.of("demo-data"))) {
            for (Path file : files.toList()) {
                Files.copy(file, own.resolve(file.getFileName()));
            }
        }
        DateTimeFormatter minute = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");
        LocalDateTime opens = LocalDateTime.now(Clock.systemDefaultZone()).minusMinutes(1);
        StringBuilder windows = new StringBuilder("event,entry,opens,closes\n");
        for (String entry : List.of("Curlew", "Plover", "Avocet", "Dunlin", "Knot", "Whimbrel")) {
            windows.append(String.join(
                            ",",
                            "Saltmarsh Rotor Day",
                            entry,
                            minute.format(opens),
                            minute.format(opens.plusMinutes(12))))
                    .append('\n');
            opens = opens.plusMinutes(15);
        }
        Files.writeString(own.resolve("windows.csv"), windows);
        return own;
    }
}
