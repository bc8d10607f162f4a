package org.skeinday.browser;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.skeinday.App;
import org.skeinday.CodeOfDay;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;

/** Every page at every size, with a day that has something to show: fits the screen, accessible, a picture of each. */
@Timeout(240)
class PagesBrowserIT {
    @TempDir
    Path root;

    private static final List<String> PREPARED = List.of(
            "/prepare",
            "/prepare/motors",
            "/prepare/stations",
            "/prepare/crew",
            "/prepare/events/new",
            "/prepare/entries/new",
            "/prepare/terms/new",
            "/prepare/rules/new",
            "/results/wall",
            "/desk",
            "/audit",
            "/practice",
            "/making",
            "/inspection",
            "/log",
            "/import",
            "/cards",
            "/tags",
            "/key-in");

    @Test
    void every_page_fits_every_screen_and_breaks_no_rule_of_accessibility() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            String token = app.joinLink().substring(app.joinLink().indexOf('#') + 1);
            String code = CodeOfDay.handedOut(app.port());
            for (String name : List.of("Mattis", "Oda")) {
                String person = Demo.person(app, name);
                laptop.form("/join", Map.of("token", token, "code", code, "role", "timekeeper", "person", person));
            }
            look(app, "now-next", "/");
            fly(laptop, 61_210, 61_300);
            call(laptop);
            laptop.form("/attempt/give-up", Map.of("attempt", attempt(laptop), "reason", "A rib broke while loading"));
            call(laptop);
            look(app, "now-called", "/");
            look(app, "results", "/results");
            look(app, "attempt-record", "/attempt/" + flown(laptop));
            look(app, "devices", "/devices");
            look(app, "join", "/join");
            look(app, "join-help", "/join/help", Browsers.Size.PHONE, Browsers.Size.LAPTOP);
            look(app, "hello", "/hello", Browsers.Size.PHONE);
            look(app, "timing-choose", "/timing");
            for (String page : PREPARED) {
                look(app, page.substring(1).replace('/', '-'), page, Browsers.few());
            }
            look(app, "nothing-here", "/no-such-page");
        }
        try (App app = Demo.startEmpty(root.resolve("empty"))) {
            look(app, "empty-now", "/");
            look(app, "empty-results", "/results");
            look(app, "empty-timing", "/timing");
            look(app, "empty-devices", "/devices");
            for (String page : PREPARED) {
                look(app, "empty" + page.replace('/', '-'), page, Browsers.Size.PHONE);
            }
        }
    }

    /** Id of the attempt whose time is official. */
    private static String flown(Visitor laptop) throws Exception {
        return laptop.get("/results").body().replaceAll("(?s).*<dt><a href=\"/attempt/([^\"]+)\".*", "$1");
    }

    private static void look(App app, String name, String path) {
        look(app, name, path, Browsers.Size.values());
    }

    private static void look(App app, String name, String path, Browsers.Size... sizes) {
        for (Browsers.Size size : sizes) {
            ChromeDriver browser = Browsers.of(size);
            browser.get("http://localhost:" + app.port() + path);
            browser.findElement(By.id("content"));
            Sight.look(browser, name + "-" + size.name().toLowerCase(Locale.ROOT));
        }
    }

    private static void call(Visitor laptop) throws Exception {
        Matcher entry = Pattern.compile("name=\"entry\" value=\"([^\"]+)\"")
                .matcher(laptop.get("/now").body());
        entry.find();
        laptop.form("/attempt/call", Map.of("entry", entry.group(1)));
    }

    private static String attempt(Visitor laptop) throws Exception {
        Matcher attempt = Pattern.compile("name=\"attempt\" value=\"([^\"]+)\"")
                .matcher(laptop.get("/now").body());
        attempt.find();
        return attempt.group(1);
    }

    private static void fly(Visitor laptop, long... readings) throws Exception {
        call(laptop);
        String attempt = attempt(laptop);
        for (int slot = 1; slot <= readings.length; slot++) {
            laptop.form("/watch/take", Map.of("attempt", attempt, "slot", String.valueOf(slot)));
            ObjectNode content = Json.MAPPER.createObjectNode();
            content.put("attempt", attempt).put("slot", slot).put("ms", readings[slot - 1]);
            laptop.taps(Json.MAPPER.createArrayNode().add(Visitor.tap(laptop.newId(), "watch.landing", content)));
        }
        laptop.form("/attempt/close", Map.of("attempt", attempt));
    }
}
