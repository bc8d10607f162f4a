package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;

/**
 * A day walked on every page as each person. The pictures are to be looked at, named by kind of day, moment, page, screen
 * and light; no page may be wider than its screen or break a rule of accessibility, in any state, light or dark:
 * {@code mvn -Pshots verify -Dit.test=DayWalkBrowserIT}.
 */
@Timeout(1800)
@EnabledIfSystemProperty(named = "shots", matches = ".+")
class DayWalkBrowserIT {
    private static final Map<String, List<String>> BY_MOMENT = new LinkedHashMap<>();
    private static final List<String> ALWAYS = List.of(
            "/",
            "/day",
            "/bench",
            "/checks",
            "/winding",
            "/timing",
            "/results",
            "/practice",
            "/evening",
            "/hall",
            "/prepare",
            "/prepare/motors",
            "/prepare/events/new",
            "/checks/lists",
            "/bench/waits",
            "/search?q=reed",
            "/import",
            "/import/history",
            "/making",
            "/inspection",
            "/join/help",
            "/key-in",
            "/join",
            "/devices",
            "/people",
            "/export",
            "/guide",
            "/results/wall",
            "/bench/wall");
    private static final List<String> OF_THE_DAY =
            List.of("/", "/day", "/bench", "/checks", "/winding", "/timing", "/results", "/hall", "/prepare");
    private static final List<String> EVENING =
            List.of("/evening", "/evening/pictures", "/evening/season", "/results", "/search?q=reed");
    private static final List<String> PRINTED =
            List.of("/cards", "/results", "/tags", "/log", "/checks/print", "/day", "/evening", "/guide", "/join/help");

    static {
        BY_MOMENT.put("called", List.of("/", "/checks", "/winding", "/timing", "/bench"));
        BY_MOMENT.put("winding", List.of("/", "/checks", "/winding", "/timing"));
        BY_MOMENT.put("holding", List.of("/", "/winding", "/timing"));
        BY_MOMENT.put("released", List.of("/", "/winding", "/timing", "/results/wall"));
        BY_MOMENT.put("landed", List.of("/", "/checks", "/winding", "/timing"));
        BY_MOMENT.put("timed", List.of("/", "/timing", "/results"));
        BY_MOMENT.put("closed", List.of("/", "/day", "/bench", "/timing", "/results", "/results/wall"));
    }

    @TempDir
    Path root;

    private final List<String> faults = new ArrayList<>();
    private final ChromeDriver browser = Browsers.of(Browsers.Size.LAPTOP);
    private App app;
    private long visits;

    /** Width and height in CSS px. */
    private enum Screen {
        PHONE(390, 844),
        UPRIGHT(820, 1180),
        FLAT(1180, 820),
        LAPTOP(1280, 820);

        private final int width;
        private final int height;

        Screen(int width, int height) {
            this.width = width;
            this.height = height;
        }
    }

    @AfterEach
    void nothing_was_at_fault() {
        browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "", "features", List.of()));
        browser.executeCdpCommand("Emulation.setEmulatedVisionDeficiency", Map.of("type", "none"));
        browser.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
        assertEquals("", String.join("\n", faults));
    }

    @Test
    void a_hosted_day() throws Exception {
        app = Demo.start(root.resolve("hosting"));
        walk("hosting", "before", ALWAYS, narrowAndWide(), List.of("light", "dark"));
        walk("hosting", "before", OF_THE_DAY, List.of(Screen.UPRIGHT, Screen.FLAT), List.of("light"));
        moments("hosting");
        walk(
                "hosting",
                "grey",
                List.of("/", "/day", "/bench", "/checks", "/winding", "/hall"),
                narrowAndWide(),
                List.of("grey"));
        walk("hosting", "evening", EVENING, narrowAndWide(), List.of("light", "dark"));
        walk("hosting", "print", PRINTED, List.of(Screen.LAPTOP), List.of("print"));
        app.close();
    }

    @Test
    void a_day_elsewhere_and_a_practice_night_and_an_empty_start() throws Exception {
        app = Demo.start(root.resolve("visiting"));
        kind("visiting");
        moments("visiting");
        app.close();
        app = Demo.start(root.resolve("practice"));
        kind("practice");
        walk("practice", "before", List.of("/", "/practice", "/bench", "/evening"), narrowAndWide(), List.of("light"));
        app.close();
        app = Demo.startEmpty(root.resolve("empty"));
        walk("empty", "start", ALWAYS, narrowAndWide(), List.of("light"));
        app.close();
    }

    private static List<Screen> narrowAndWide() {
        return List.of(Screen.PHONE, Screen.LAPTOP);
    }

    private Visitor laptop() {
        return new Visitor(app.port(), "", ++visits); // each with ids of its own
    }

    private void kind(String kind) throws Exception {
        var forms = new org.skeinday.prepare.FilledForms(laptop());
        forms.save("events", forms.row("events", "Saltmarsh Rotor Day"), Map.of("kind", kind));
    }

    private void moments(String day) throws Exception {
        Visitor laptop = laptop();
        String attempt = CalledForTests.callWithItsMotor(laptop);
        look(day, "called");
        CalledForTests.letWind(laptop, attempt);
        for (String to : List.of("winding", "holding", "released", "landed")) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
            look(day, to);
        }
        ObjectNode landing = Json.MAPPER.createObjectNode().put("attempt", attempt);
        laptop.taps(Json.MAPPER
                .createArrayNode()
                .add(Visitor.tap(
                        laptop.newId(), "watch.landing", landing.put("slot", 1).put("ms", 312_400))));
        look(day, "timed");
        laptop.form("/attempt/close", Map.of("attempt", attempt, "why", "one watch only"));
        look(day, "closed");
    }

    private void look(String day, String moment) {
        List<String> pages = BY_MOMENT.getOrDefault(moment, List.of());
        walk(day, moment, pages, narrowAndWide(), List.of("light", "dark"));
        if (day.equals("hosting")) {
            walk(day, moment, pages, List.of(Screen.UPRIGHT, Screen.FLAT), List.of("light"));
        }
    }

    private void walk(String day, String moment, List<String> pages, List<Screen> screens, List<String> lights) {
        for (Screen screen : screens) {
            for (String light : lights) {
                for (String page : pages) {
                    browser.get("http://localhost:" + app.port() + page);
                    browser.findElement(By.id("content"));
                    show(screen, light);
                    see(
                            String.join(
                                    "-",
                                    "walk",
                                    day,
                                    moment,
                                    name(page),
                                    screen.name().toLowerCase(Locale.ROOT),
                                    light),
                            light.equals("print"));
                }
            }
        }
    }

    /** After the page has come: the driver puts its own screen back with each. */
    private void show(Screen screen, String light) {
        browser.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of(
                        "width",
                        screen.width,
                        "height",
                        screen.height,
                        "deviceScaleFactor",
                        1,
                        "mobile",
                        screen == Screen.PHONE));
        browser.executeCdpCommand("Emulation.setEmulatedMedia", media(light));
        browser.executeCdpCommand(
                "Emulation.setEmulatedVisionDeficiency",
                Map.of("type", light.equals("grey") ? "achromatopsia" : "none"));
    }

    private static String name(String page) {
        return page.equals("/") ? "now" : page.substring(1).replaceAll("[^a-z]+", "-");
    }

    /** Goes on after a fault: one walk names them all. */
    private void see(String name, boolean onPaper) {
        if (onPaper) {
            Browsers.shot(browser, name);
            return;
        }
        try {
            Sight.look(browser, name);
        } catch (AssertionError e) {
            faults.add(String.valueOf(e.getMessage()));
        }
    }

    private static Map<String, Object> media(String light) {
        return light.equals("print")
                ? Map.of("media", "print", "features", List.of())
                : Map.of(
                        "media",
                        "",
                        "features",
                        List.of(Map.of(
                                "name", "prefers-color-scheme", "value", light.equals("dark") ? "dark" : "light")));
    }
}
