package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Await;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.house.NeedsQuiet;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;

/**
 * Ctrl-C, and the system's signal to stop, under load: it ends in good order within five seconds, and nothing that was
 * answered as saved is lost. {@code -Dskeinday.stops=50} for a long run.
 */
@NeedsQuiet
@Timeout(1200)
class StopFaultIT {
    private static final int STOPS = Integer.getInteger("skeinday.stops", 3);
    private static final long SEED = Long.getLong("skeinday.seed", 20_261_128L);

    /** Java's own end, after the program has closed. */
    private static final long END_MS = 1_000;

    @TempDir
    Path root;

    @Test
    void stopped_under_load_it_ends_within_five_seconds_with_0_and_loses_nothing() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        TapLoad load = null;
        SplittableRandom random = new SplittableRandom(SEED);
        List<String> signals = Program.isInterruptible() ? List.of("INT", "TERM") : List.of("TERM");
        long longest = 0;
        for (int stop = 0; stop < STOPS; stop++) {
            Program program = Program.serve(data, port);
            try {
                if (load == null) {
                    load = new TapLoad(port, CalledForTests.call(new Visitor(port, "", 1)));
                }
                load.begin(SEED + stop);
                Thread.sleep(random.nextLong(200, 900));
                long begun = System.nanoTime();
                assertEquals(0, program.end(signals.get(stop % signals.size())), String.join("\n", program.said()));
                long took = (System.nanoTime() - begun) / 1_000_000;
                longest = Math.max(longest, took);
                assertTrue(took <= Pace.normal().close().toMillis() + END_MS, "stop " + stop + " took " + took + " ms");
                Await.until(Duration.ofSeconds(5), () -> program.said().contains("Stopped. Everything is saved."));
            } finally {
                program.kill();
            }
            load.end();
            assertKept(data, load);
            assertTrue(Files.exists(data.resolve("database-seal")), "closed in good order: " + program.said());
        }
        assertEquals(0, Program.run("verify", "--data", data.toString()));
        System.out.printf(
                "seed %d: stopped %d times, the longest took %d ms, %d answered, 0 lost%n",
                SEED, STOPS, longest, load == null ? 0 : load.saved.size());
    }

    @Test
    void told_to_stop_before_it_is_ready_it_ends_with_0_and_the_next_start_is_a_whole_first_one() throws Exception {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int stop = 0; stop < STOPS; stop++) {
            Path data = root.resolve("early-" + stop);
            int port = Program.freePort();
            Process starting = Program.begin("serve", "--data", data.toString(), "--port", String.valueOf(port));
            Await.until(Duration.ofSeconds(30), () -> Files.exists(data.resolve("lock")));
            Thread.sleep(random.nextLong(1, 300));
            new ProcessBuilder("kill", "-TERM", String.valueOf(starting.pid()))
                    .start()
                    .waitFor(); // and its words can still be read
            String said = new String(starting.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(0, starting.waitFor(), said);
            try (Stream<Path> left = Files.list(data)) {
                assertEquals(
                        List.of(),
                        left.map(file -> file.getFileName().toString())
                                .filter(name -> name.endsWith(".written-aside") || name.endsWith(".trace.db"))
                                .toList());
            }
            boolean told = said.contains("Coach's PIN:");
            try (Program again = Program.serve(data, port)) {
                if (!told) { // a PIN that nobody was told is of no use
                    Await.until(
                            Duration.ofSeconds(10),
                            () -> again.said().stream().anyMatch(line -> line.contains("Coach's PIN:")));
                }
            }
        }
    }

    private static void assertKept(Path data, TapLoad load) throws IOException {
        Map<String, Long> journal = new HashMap<>();
        for (String line : Files.readAllLines(data.resolve("journal.jsonl"))) {
            JsonNode record = Json.MAPPER.readTree(line);
            journal.put(record.path("act").asText(), record.path("n").asLong());
        }
        assertFalse(load.saved.isEmpty());
        load.saved.forEach((id, n) -> assertEquals(n, journal.get(id), "tap " + id));
        List<String> others = load.surprises().stream()
                .filter(answer -> !answer.contains("\"later\"")) // it was stopping: the device sends it again
                .toList();
        assertEquals(List.of(), others, "seed " + SEED);
    }
}
