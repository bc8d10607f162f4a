package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;

/** The light of a screen is the device's own, on every page, and nothing of the record. */
@Timeout(60)
class ScreenLightWebTest {
    @TempDir
    Path root;

    @Test
    void each_device_is_told_its_own_light_and_keeps_it() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 3);
            assertTrue(laptop.get("/bench").body().contains("data-light=\"\""), "as the device is set");
            HttpResponse<String> told = laptop.form("/light", Map.of("light", "dark"));
            assertEquals(204, told.statusCode());
            String cookie = told.headers().firstValue("Set-Cookie").orElseThrow();
            assertTrue(cookie.startsWith("light=dark;") && cookie.contains("HttpOnly"), cookie);
            Visitor dark = new Visitor(app.port(), "light=dark", 4);
            String page = dark.get("/bench").body();
            assertTrue(page.contains("data-light=\"dark\""), "told dark");
            assertTrue(
                    Pattern.compile("value=\"dark\" aria-pressed=\"true\"")
                            .matcher(page)
                            .find(),
                    "and says so");
            assertTrue(laptop.get("/bench").body().contains("data-light=\"\""), "nobody else's");
            Visitor forged = new Visitor(app.port(), "light=\"><b>", 5);
            assertTrue(forged.get("/bench").body().contains("data-light=\"\""), "what nobody knows is as the device");
        }
    }

    @Test
    void a_refusal_has_no_foot() throws Exception {
        try (App app = Demo.start(root.resolve("refused"))) {
            Visitor laptop = new Visitor(app.port(), "", 6);
            assertFalse(laptop.get("/nowhere").body().contains("<form"), "nothing to press beside the way out");
        }
    }

    /** It stands twice in the style sheet: as the device is set, and as it was told. */
    @Test
    void the_dark_is_the_same_both_ways() throws Exception {
        String css = Files.readString(Path.of("static/css/skeinday.css"));
        List<String> dark = Pattern.compile("--paper: #151817;[^}]*")
                .matcher(css)
                .results()
                .map(MatchResult::group)
                .map(block -> block.replaceAll("\\s+", " "))
                .toList();
        assertEquals(2, dark.size());
        assertEquals(dark.get(0), dark.get(1));
    }
}
