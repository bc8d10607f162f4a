package org.skeinday.prepare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;

/** Clean winds that the program has counted, of the one who is named for winding. */
class CleanWindsWebTest {
    @TempDir
    Path root;

    @Test
    void a_clean_wind_is_counted_for_the_winder_shown_and_taken_in_with_one_button() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 91);
            var forms = new FilledForms(laptop);
            assertEquals(
                    204,
                    forms.save("crew", forms.row("crew", "Tomek"), Map.of("clean-winds", "", "clean winds", ""))
                            .statusCode());
            wind(laptop, "", 206);
            String crew = laptop.get("/prepare/crew").body();
            assertTrue(crew.contains("The program has counted 1 clean wind."), crew);
            String id = CalledForTests.value(crew, "name=\"id\" value=\"([^\"]+)\"");
            assertEquals(
                    409,
                    laptop.form("/clean-winds", Map.of("id", id, "winds", "2")).statusCode());
            assertEquals(
                    204,
                    laptop.form("/clean-winds", Map.of("id", id, "winds", "1")).statusCode());
            String after = laptop.get("/prepare/crew").body();
            assertFalse(after.contains("The program has counted"), after);
            assertTrue(after.contains("<td>1</td>"), after);
            assertEquals(
                    403,
                    Demo.joined(app, "helper", "", 92)
                            .form("/clean-winds", Map.of("id", id, "winds", "1"))
                            .statusCode());
        }
    }

    @Test
    void who_is_named_later_has_not_wound_what_was_wound_before() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 95);
            var forms = new FilledForms(laptop);
            for (String person : new String[] {"Tomek", "Jorun"}) {
                forms.save("crew", forms.row("crew", person), Map.of("clean-winds", ""));
            }
            wind(laptop, "", 206);
            String before = counted(laptop);
            assertEquals("Tomek", before);
            var saved = forms.save("entries", forms.row("entries", "Curlew"), Map.of("winds", "Jorun"));
            assertEquals(204, saved.statusCode(), saved.body());
            assertEquals(before, counted(laptop));
        }
    }

    @Test
    void where_nobody_was_named_nobody_is_credited_who_is_named_later() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 96);
            var forms = new FilledForms(laptop);
            forms.save("crew", forms.row("crew", "Tomek"), Map.of("clean-winds", ""));
            assertEquals(
                    204,
                    forms.save("entries", forms.row("entries", "Curlew"), Map.of("winds", ""))
                            .statusCode());
            wind(laptop, "", 206);
            forms.save("entries", forms.row("entries", "Curlew"), Map.of("winds", "Tomek"));
            assertFalse(laptop.get("/prepare/crew").body().contains("The program has counted"));
        }
    }

    /** Whose row says that the program has counted a wind. */
    private static String counted(Visitor laptop) throws Exception {
        String crew = laptop.get("/prepare/crew").body();
        return CalledForTests.value(crew, "The program has counted 1 clean wind\\..*?Confirm 1 clean winds of (\\w+)");
    }

    @Test
    void a_wind_that_broke_is_none() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 93);
            var forms = new FilledForms(laptop);
            forms.save("crew", forms.row("crew", "Tomek"), Map.of("clean-winds", "", "clean winds", ""));
            wind(laptop, "broke", 150);
            assertFalse(laptop.get("/prepare/crew").body().contains("The program has counted"));
        }
    }

    /** One wind for the first entry. @param phase tapped before it is counted, empty for none */
    private static void wind(Visitor laptop, String phase, int stop) throws Exception {
        String motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        String attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
        String id = laptop.newId();
        laptop.tapAs(id, "wind.begin", Json.MAPPER.createObjectNode().put("attempt", attempt));
        if (!phase.isEmpty()) {
            var tap = Json.MAPPER
                    .createObjectNode()
                    .put("wind", id + "-0")
                    .put("phase", phase)
                    .put("elapsedMs", 5000);
            assertEquals("saved", laptop.tap("wind.phase", tap).path("state").asText());
        } else {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released", "seen", ""));
        }
        var counted = laptop.form(
                "/winding/count",
                Map.of(
                        "wind",
                        id + "-0",
                        "atFull",
                        "",
                        "stop",
                        String.valueOf(stop),
                        "backOff",
                        phase.isEmpty() ? "2" : ""));
        assertEquals(200, counted.statusCode(), counted.body());
    }
}
