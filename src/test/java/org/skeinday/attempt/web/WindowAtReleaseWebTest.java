package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.prepare.FilledForms;

/** A release is judged once, by the window of that moment: also where there was none. */
@Timeout(60)
class WindowAtReleaseWebTest {
    @TempDir
    Path root;

    @Test
    void a_window_that_is_added_after_a_release_judges_it_not_now_and_not_after_a_rebuild() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 91);
            FilledForms forms = new FilledForms(laptop);
            String entry = value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
            Map<String, String> window = forms.shown(forms.row("windows", "Curlew"));
            assertEquals(204, laptop.form("/prepare/windows/remove", window).statusCode());
            assertEquals(
                    200,
                    laptop.form("/attempt/call", Map.of("entry", entry, "number", "1", "assigned", "yes"))
                            .statusCode());
            String attempt = CalledForTests.letWind(laptop);
            for (String to : new String[] {"winding", "holding", "released"}) {
                assertEquals(
                        200,
                        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to))
                                .statusCode());
            }
            LocalDateTime minute = LocalDateTime.now(Clock.systemDefaultZone()).truncatedTo(ChronoUnit.MINUTES);
            forms.add(
                    "windows",
                    Map.of(
                            "entry", "Curlew",
                            "opens", minute.plusMinutes(20).toString(),
                            "closes", minute.plusMinutes(30).toString()));
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "landed"));
            judgesNothing(laptop);
        }
        Files.delete(root.resolve("day/skeinday.mv.db"));
        try (App app = Demo.startEmpty(root.resolve("day"))) {
            judgesNothing(new Visitor(app.port(), "", 92));
        }
    }

    private static void judgesNothing(Visitor laptop) throws Exception {
        String now = laptop.get("/now").body();
        assertTrue(now.contains("<h1>Curlew, attempt 1 <span class=\"state now\">landed"), now);
        assertFalse(now.contains("before the window opens") || now.contains("before it opened"), now);
        assertFalse(laptop.get("/results").body().contains("before the window opens"));
    }
}
