package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.prepare.FilledForms;

/** Elsewhere a window starts when the official says so: one tap, put right by seconds. */
@Timeout(60)
class StartWindowWebTest {
    private static final String CLOSES = "window closes in(?:</p>\\s*<p class=\"huge\"| <b) data-until=\"(\\d+)\"";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String entry;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 71);
        entry = value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void kind(String kind) throws Exception {
        FilledForms forms = new FilledForms(laptop);
        assertEquals(
                204,
                forms.save("events", forms.row("events", "Saltmarsh Rotor Day"), Map.of("kind", kind))
                        .statusCode());
    }

    @Test
    void one_tap_opens_it_for_its_length_and_five_seconds_put_the_tap_right() throws Exception {
        kind("visiting");
        assertTrue(laptop.get("/now").body().contains("the window opens in"));
        Clock clock = Clock.systemDefaultZone();
        long before = clock.millis();
        HttpResponse<String> open = laptop.form("/window/starts", Map.of("entry", entry));
        assertEquals(200, open.statusCode(), open.body());
        long closes = Long.parseLong(value(open.body(), CLOSES));
        long opened = closes - 12 * 60_000; // as long as the event's windows are
        assertTrue(before <= opened && opened <= clock.millis(), "at the press");
        HttpResponse<String> earlier = laptop.form("/window/moved", Map.of("entry", entry, "seconds", "-5"));
        assertEquals(closes - 5_000, Long.parseLong(value(earlier.body(), CLOSES)));
        assertEquals(
                422,
                laptop.form("/window/moved", Map.of("entry", entry, "seconds", "600"))
                        .statusCode());
    }

    @Test
    void when_hosting_the_windows_are_those_of_the_day() throws Exception {
        kind("hosting");
        assertFalse(laptop.get("/now").body().contains("Window starts now"));
    }
}
