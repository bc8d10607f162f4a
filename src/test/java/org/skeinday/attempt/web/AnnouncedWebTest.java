package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.browser.SteppedClock;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Elsewhere the host decides: our watches, however far apart, ask nobody here for anything, and stand beside its time. */
@Timeout(120)
class AnnouncedWebTest {
    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());

    private static void says(String words, String page) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    private static void saysNot(String words, String page) {
        assertFalse(page.contains(words), words + " in " + page);
    }

    private void tap(Visitor who, String kind, String attempt, int slot, int ms) throws Exception {
        ObjectNode content = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("slot", slot)
                .put("serverMs", clock.millis())
                .put("boundMs", 5);
        var answer = who.tap(kind, ms == 0 ? content : content.put("ms", ms));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    @Test
    void watches_apart_ask_for_no_decision_and_one_figure_is_held_against_the_announced_time() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        try (App app = App.start(settings, clock, new SecureRandom())) {
            var laptop = new Visitor(app.port(), "", 981);
            var forms = new FilledForms(laptop);
            forms.save("events", forms.row("events", "Saltmarsh Rotor Day"), Map.of("kind", "visiting"));
            CalledForTests.callOnly(laptop);
            String attempt = CalledForTests.letWind(laptop);
            Visitor one = Demo.joined(app, "timekeeper", "", 982);
            Visitor two = Demo.joined(app, "timekeeper", "", 983);
            one.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
            two.form("/watch/take", Map.of("attempt", attempt, "slot", "2"));
            tap(one, "watch.release", attempt, 1, 0);
            tap(two, "watch.release", attempt, 2, 0);
            clock.stepBy(Duration.ofMillis(24_000));
            tap(one, "watch.landing", attempt, 1, 21_430);
            tap(two, "watch.landing", attempt, 2, 23_520);

            String now = laptop.get("/now").body();
            says("Our own watches are in doubt. The host decides", now);
            says("our watches are in doubt, and the announced time counts", now);
            says(
                    "our watches are in doubt",
                    one.get("/timing/part?attempt=" + attempt).body());
            for (String asks :
                    new String[] {"the captain: the watches", "say whether", "Say whether", "/watch/judge"}) {
                saysNot(asks, now);
                saysNot(asks, one.get("/timing/part?attempt=" + attempt).body());
            }

            laptop.form("/attempt/announce", Map.of("attempt", attempt, "announced", "0:20.5"));
            String told = laptop.get("/now").body();
            saysNot("waits for", told);
            String rule = CalledForTests.value(told, "<dt>by the rule</dt><dd>[^<]*?(\\d:\\d\\d\\.\\d)<");
            says("0:20.50; ours 0:21.43 and 0:23.52, by the rule " + rule + ": ", told);
            clock.stepBy(Duration.ofMillis(5_000));
            assertEquals(
                    200,
                    laptop.form("/attempt/close", Map.of("attempt", attempt)).statusCode());
            clock.stepBy(Duration.ofMillis(5_000));
            laptop.form("/attempt/type-time", Map.of("attempt", attempt, "typed-slot", "2", "typed", "0:12.00"));
            String dispute = laptop.get("/dispute/" + attempt).body();
            says("0:12.00 – came in after the closing", dispute);
            says("ours 0:21.43 and 0:23.52, by the rule " + rule, dispute);
        }
    }
}
