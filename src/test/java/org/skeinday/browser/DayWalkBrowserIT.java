package org.skeinday.browser;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledAttempt;

/**
 * A day walked on every page as each person, to be looked at: pictures only, nothing is asserted here. They are named by
 * kind of day, moment, page, screen and light: {@code mvn -Pshots verify -Dit.test=DayWalkBrowserIT}.
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
            "/key-in",
            "/join",
            "/devices",
            "/people",
            "/export",
            "/guide",
            "/results/wall",
            "/bench/wall");
    private static final List<String> PRINTED =
            List.of("/cards", "/results", "/tags", "/log", "/checks/print", "/day", "/evening", "/guide", "/join/help");

    static {
        BY_MOMENT.put("called", List.of("/", "/checks", "/winding", "/timing", "/bench"));
        BY_MOMENT.put("winding", List.of("/", "/checks", "/winding", "/timing"));
        BY_MOMENT.put("holding", List.of("/", "/winding", "/timing"));
        BY_MOMENT.put("released", List.of("/", "/winding", "/timing", "/results/wall"));
        BY_MOMENT.put("landed", List.of("/", "/checks", "/winding", "/timing"));
    }

    @TempDir
    Path root;

    private final ChromeDriver browser = Browsers.of(Browsers.Size.LAPTOP);
    private App app;

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

    @Test
    void a_hosted_day() throws Exception {
        app = Demo.start(root.resolve("hosting"));
        walk("hosting", "before", ALWAYS, List.of(Screen.values()), List.of("light", "dark"));
        moments("hosting");
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
        return new Visitor(app.port(), "", 21);
    }

    private void kind(String kind) throws Exception {
        var forms = new org.skeinday.prepare.Prepared(laptop());
        forms.save("events", forms.row("events", "Saltmarsh Rotor Day"), Map.of("kind", kind));
    }

    private void moments(String day) throws Exception {
        Visitor laptop = laptop();
        String attempt = CalledAttempt.call(laptop);
        look(day, "called");
        CalledAttempt.letWind(laptop, attempt);
        for (String to : List.of("winding", "holding", "released", "landed")) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
            look(day, to);
        }
    }

    private void look(String day, String moment) {
        walk(day, moment, BY_MOMENT.getOrDefault(moment, List.of()), List.of(Screen.values()), List.of("light"));
    }

    private void walk(String day, String moment, List<String> pages, List<Screen> screens, List<String> lights) {
        for (Screen screen : screens) {
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
            for (String light : lights) {
                browser.executeCdpCommand("Emulation.setEmulatedMedia", media(light));
                for (String page : pages) {
                    browser.get("http://localhost:" + app.port() + page);
                    browser.findElement(By.id("content"));
                    String name = page.equals("/") ? "now" : page.substring(1).replace('/', '-');
                    Browsers.shot(
                            browser,
                            String.join(
                                    "-",
                                    "walk",
                                    day,
                                    moment,
                                    name,
                                    screen.name().toLowerCase(java.util.Locale.ROOT),
                                    light));
                }
            }
        }
    }

    private static Map<String, Object> media(String light) {
        return light.equals("print")
                ? Map.of("media", "print", "features", List.of())
                : Map.of("media", "", "features", List.of(Map.of("name", "prefers-color-scheme", "value", light)));
    }
}
