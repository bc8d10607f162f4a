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
import org.skeinday.fault.CalledForTests;
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
        HttpResponse<String> earlier = moved(laptop, "-5", opens(open.body()));
        assertEquals(closes - 5_000, Long.parseLong(value(earlier.body(), CLOSES)));
        assertEquals(422, moved(laptop, "600", opens(earlier.body())).statusCode());
    }

    private static String opens(String page) {
        return value(page, "name=\"seen\" value=\"(\\d{12,})\"");
    }

    private HttpResponse<String> moved(Visitor who, String seconds, String seen) throws Exception {
        return who.form("/window/moved", Map.of("entry", entry, "seconds", seconds, "seen", seen));
    }

    private static void says(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    @Test
    void who_comes_second_is_told_who_was_quicker_and_the_window_moves_once() throws Exception {
        kind("visiting");
        Visitor phone = Demo.joined(app, "captain", "", 72);
        assertTrue(phone.get("/now").body().contains("Window starts now"));
        HttpResponse<String> open = laptop.form("/window/starts", Map.of("entry", entry));
        assertFalse(open.body().contains("Window starts now"), "it is open: only seconds put it right");
        HttpResponse<String> second = phone.form("/window/starts", Map.of("entry", entry));
        says(409, "The window is open since ", second);
        says(409, "The laptop said 'window starts now' at ", second);
        String seen = opens(open.body());
        assertEquals(200, moved(laptop, "-5", seen).statusCode());
        HttpResponse<String> late = moved(phone, "-5", seen);
        says(409, "The window was moved meanwhile: it opens at ", late);
        says(409, "The laptop said '5 s earlier' at ", late);
        long closes = Long.parseLong(value(open.body(), CLOSES));
        String now = phone.get("/now").body();
        assertEquals(closes - 5_000, Long.parseLong(value(now, CLOSES)), "once, not twice");
        says(409, "it opens at ", moved(phone, "5", "0"));
    }

    @Test
    void while_the_model_flies_or_the_hall_stands_still_nothing_moves_its_window() throws Exception {
        kind("visiting");
        laptop.form("/hall/stop", Map.of("stop-reason", "lights", "stop-words", ""));
        says(422, "The hall is stopped", laptop.form("/window/starts", Map.of("entry", entry)));
        String stop = value(laptop.get("/first").body(), "name=\"stop\" value=\"([^\"]+)\"");
        laptop.form("/hall/resume", Map.of("stop", stop));
        String motor = value(laptop.get("/now").body(), "(?s)name=\"motor\".*?<option value=\"([^\"]+)\"");
        laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor));
        String attempt = CalledForTests.letWind(laptop);
        for (String to : new String[] {"winding", "holding", "released"}) {
            assertEquals(
                    200,
                    laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to))
                            .statusCode());
        }
        says(
                422,
                "A window is started or put right before the release",
                laptop.form("/window/starts", Map.of("entry", entry)));
    }

    @Test
    void every_page_has_the_open_window_in_its_strip_until_the_motor_is_wound() throws Exception {
        kind("visiting");
        String motor = value(laptop.get("/now").body(), "(?s)name=\"motor\".*?<option value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        String attempt = value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        String title = value(called, "<h1>([^<]+?) <");
        phase("called", attempt, title);
        assertTrue(laptop.get("/now").body().contains(">window open</li>"), "it comes");
        laptop.form("/window/starts", Map.of("entry", entry));
        phase("window open", attempt, title);
        moved(laptop, "-5", opens(laptop.get("/now").body()));
        phase("window open", attempt, title);
        CalledForTests.letWind(laptop, attempt);
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding"));
        phase("winding", attempt, title);
        for (String to : new String[] {"holding", "released", "landed"}) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
        }
        phase("landed", attempt, title);
        assertTrue(
                laptop.get("/attempt/" + attempt).body().contains("<li class=\"done\">window open</li>"),
                "it was open when the model went");
        kind("hosting");
        assertFalse(laptop.get("/attempt/" + attempt).body().contains("window open</li>"), "a window of the day");
    }

    private void phase(String words, String attempt, String title) throws Exception {
        LiveFigures figures = LiveFigures.of(laptop, attempt, title);
        assertEquals(Map.of(), figures.different());
        assertEquals(words, figures.said("phase", "record"));
        assertTrue(figures.pagesWith("phase") >= 6, figures.toString());
    }

    @Test
    void when_hosting_the_windows_are_those_of_the_day() throws Exception {
        kind("hosting");
        assertFalse(laptop.get("/now").body().contains("Window starts now"));
        says(422, "elsewhere only", laptop.form("/window/starts", Map.of("entry", entry)));
    }
}
