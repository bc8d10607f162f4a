package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.App;
import org.skeinday.Await;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.browser.SteppedClock;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** The laptop's clock is set, or the laptop sleeps, while a motor waits and a watch runs. */
@Timeout(60)
class ClockStepWebTest {
    private static final Duration MOST = Duration.ofSeconds(20);
    private static final long SLACK_MS = 15_000; // what a busy machine takes between two looks
    private static final String QUESTION = "did the laptop sleep, or was its clock set?";

    @TempDir
    Path root;

    private interface Day {
        void with(Visitor laptop, String motor) throws Exception;
    }

    private void on(Clock clock, Day day) throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        try (App app = App.start(settings, clock, new SecureRandom())) {
            Visitor laptop = new Visitor(app.port(), "", 31);
            String motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
            ObjectNode lubricate = Json.MAPPER.createObjectNode().put("motor", motor);
            assertEquals(
                    "saved",
                    laptop.tap("bench.step", lubricate.put("deed", "lubricate"))
                            .path("state")
                            .asText());
            day.with(laptop, motor);
        }
    }

    /** How long the motor's wait still goes on, by the server's clock. */
    private static long leftMs(Visitor laptop, String motor, Clock clock) throws Exception {
        String page = laptop.get("/bench/motor/" + motor).body();
        return Long.parseLong(CalledForTests.value(page, "data-until=\"(\\d+)\" data-rings")) - clock.millis();
    }

    private static boolean isNear(long ms, Visitor laptop, String motor, Clock clock) {
        try {
            return Math.abs(leftMs(laptop, motor, clock) - ms) < SLACK_MS;
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private List<String> jumps() {
        try {
            return Files.readAllLines(root.resolve("day/journal.jsonl")).stream()
                    .filter(line -> line.contains("\"kind\":\"clock.jumped\""))
                    .toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private void assertRecorded(Duration by) throws IOException {
        long ms = Json.MAPPER
                .readTree(jumps().get(0))
                .path("facts")
                .path(0)
                .path("body")
                .path("byMs")
                .asLong();
        assertEquals(by.toMillis(), ms, 2_000);
    }

    private static void land(Visitor laptop, String attempt, long ms) throws Exception {
        ObjectNode landing = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("slot", 1)
                .put("ms", ms);
        assertEquals("saved", laptop.tap("watch.landing", landing).path("state").asText());
    }

    @ParameterizedTest
    @ValueSource(strings = {"PT1H", "PT-1H", "P1D", "P-1D"})
    void a_step_of_the_clock_is_recorded_and_changes_no_wait_and_no_time(Duration by) throws Exception {
        SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
        on(clock, (laptop, motor) -> {
            String attempt = CalledForTests.call(laptop);
            long before = leftMs(laptop, motor, clock);
            clock.stepBy(by);
            Await.until(MOST, () -> isNear(before, laptop, motor, clock)); // the line is there before it is applied
            assertEquals(1, jumps().size());
            assertRecorded(by);
            assertEquals(before, leftMs(laptop, motor, clock), SLACK_MS, "the wait goes on as it did");
            assertEquals(
                    !by.isNegative(),
                    laptop.get("/bench").body().contains(QUESTION),
                    "a clock that was set back cannot have slept");
            land(laptop, attempt, 61_210);
            assertTrue(laptop.get("/now").body().contains("1:01.21"), "the watch's own time");
        });
    }

    @Test
    void a_laptop_that_slept_ten_minutes_asks_and_counts_them_only_once_somebody_says_so() throws Exception {
        SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
        Duration slept = Duration.ofMinutes(10);
        on(clock, (laptop, motor) -> {
            long before = leftMs(laptop, motor, clock);
            clock.stepBy(slept);
            Await.until(MOST, () -> isNear(before, laptop, motor, clock)); // the line is there before it is applied
            assertEquals(1, jumps().size());
            assertRecorded(slept);
            assertEquals(before, leftMs(laptop, motor, clock), SLACK_MS, "no time is invented");
            String bench = laptop.get("/bench").body();
            assertTrue(bench.contains(QUESTION) && bench.matches("(?s).*went (9:5|10:0)\\d min ahead.*"), bench);
            String jump = Json.MAPPER
                    .readTree(jumps().get(0))
                    .path("facts")
                    .path(0)
                    .path("body")
                    .path("id")
                    .asText();
            laptop.tap(
                    "clock.slept",
                    Json.MAPPER.createObjectNode().put("jump", jump).put("slept", true));
            assertEquals(before - slept.toMillis(), leftMs(laptop, motor, clock), SLACK_MS);
            assertFalse(laptop.get("/bench").body().contains(QUESTION), "it is asked once");
        });
    }

    @Test
    void the_change_from_summer_time_is_no_step_and_changes_no_wait() throws Exception {
        Clock berlin = Clock.system(ZoneId.of("Europe/Berlin"));
        Instant change = Instant.parse("2026-10-25T01:00:00Z");
        SteppedClock clock = new SteppedClock(berlin);
        clock.stepBy(Duration.between(berlin.instant(), change.minusSeconds(6)));
        on(clock, (laptop, motor) -> {
            long before = leftMs(laptop, motor, clock);
            assertTrue(clock.instant().isBefore(change), "the machine was too slow for this test");
            Await.until(MOST, () -> clock.instant().isAfter(change.plusMillis(200)));
            assertEquals(before, leftMs(laptop, motor, clock) + 6_000, SLACK_MS);
            assertEquals(List.of(), jumps());
        });
    }
}
