package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.prepare.FilledForms;

/** A called attempt whose window has closed waits behind those that can still fly, and says what can be done. */
@Timeout(120)
class ShutWindowWebTest {
    @TempDir
    Path root;

    @Test
    void what_can_still_fly_comes_first_on_every_page_and_the_other_says_that_its_window_has_closed() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            var laptop = new Visitor(app.port(), "", 94);
            call(laptop, "Curlew");
            call(laptop, "Avocet");
            var forms = new FilledForms(laptop);
            forms.window("Curlew", Clock.systemDefaultZone(), -30, -5);
            forms.window("Avocet", Clock.systemDefaultZone(), -2, 40);
            for (String page : new String[] {"/now", "/timing/part", "/winding/part"}) {
                String html = laptop.get(page).body();
                assertTrue(html.contains("<h1>Avocet, attempt 1"), page + html);
                assertTrue(
                        html.contains(
                                page.equals("/now")
                                        ? "Its window has closed: "
                                        : "Curlew, attempt 1: called, its window has closed"),
                        page + html);
            }
            String curlew = CalledForTests.value(laptop.get("/now").body(), "href=\"/\\?attempt=([^\"]+)\">Curlew");
            String now = laptop.get("/now?attempt=" + curlew).body();
            assertTrue(now.contains("after the window closed"), now);
            assertTrue(
                    now.contains(
                            "If the officials gave more time, move its window in Prepare; else abandon the attempt."),
                    now);
            forms.window("Curlew", Clock.systemDefaultZone(), -30, 10);
            assertTrue(laptop.get("/now").body().contains("<h1>Curlew, attempt 1"), "it can fly, and closes first");
        }
    }

    private static void call(Visitor laptop, String name) throws Exception {
        String entry = CalledForTests.value(
                laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>" + name + "</option>");
        assertEquals(
                200,
                laptop.form("/attempt/call", Map.of("entry", entry, "number", "1", "assigned", "yes"))
                        .statusCode());
    }
}
