package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;

/**
 * The program is killed at random moments under load, while it starts and while it rebuilds, and between the rounds its
 * database is cut or deleted. Nothing that was answered as saved may be lost or counted twice.
 *
 * <p>{@code -Dskeinday.rounds=200} for a long run, {@code -Dskeinday.seed=7} for other moments.
 */
@Timeout(3600)
class KillFaultIT {
    private static final int ROUNDS = Integer.getInteger("skeinday.rounds", 8);
    private static final long SEED = Long.getLong("skeinday.seed", 20_261_125L);

    /** A first start has made as many files and folders when it is ready. */
    private static final int FIRST_FILES = 12;

    private final SplittableRandom random = new SplittableRandom(SEED);
    private int rebuildsKilled;
    private int startsKilled;

    @TempDir
    Path root;

    @Test
    void nothing_that_was_saved_is_lost_or_doubled_by_kills_and_cut_databases() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        TapLoad load = firstCall(data, port);
        for (int round = 0; round < ROUNDS; round++) {
            try (Program program = Program.serve(data, port)) {
                assertKeeps(data, port, load);
                load.begin(SEED + round);
                Thread.sleep(random.nextLong(80, 700));
                program.kill();
                load.end();
            }
            harm(data, round);
        }
        assertEquals(List.of(), load.surprises(), "seed " + SEED);
        allTold(data, port, load);
        System.out.printf(
                "seed %d: %d rounds, %d taps sent, %d answered, %d starts and %d rebuilds killed, 0 lost, 0 doubled%n",
                SEED, ROUNDS, load.sent.size(), load.saved.size(), startsKilled, rebuildsKilled);
    }

    private static TapLoad firstCall(Path data, int port) throws Exception {
        try (Program program = Program.serve(data, port)) {
            TapLoad load = new TapLoad(port, CalledForTests.call(new Visitor(port, "", 1)));
            program.kill();
            return load;
        }
    }

    /** Every tap that was answered stands once in the journal under its number; some are sent again. */
    private void assertKeeps(Path data, int port, TapLoad load) throws Exception {
        Map<String, Long> journal = journal(data);
        load.saved.forEach((id, n) -> assertEquals(n, journal.get(id), "tap " + id));
        ArrayNode again = Json.MAPPER.createArrayNode();
        load.sent.values().stream().limit(50).forEach(again::add);
        if (!again.isEmpty()) {
            load.send(new Visitor(port, "", 2), again);
        }
        assertEquals(List.of(), load.surprises());
    }

    /** Act id to number; fails when an id stands twice. */
    private static Map<String, Long> journal(Path data) throws IOException {
        Map<String, Long> found = new HashMap<>();
        for (String line : Files.readAllLines(data.resolve("journal.jsonl"))) {
            JsonNode record = Json.MAPPER.readTree(line);
            Long before =
                    found.put(record.path("act").asText(), record.path("n").asLong());
            assertEquals(null, before, "an act stands twice: " + line);
        }
        return found;
    }

    private void harm(Path data, int round) throws Exception {
        Path database = data.resolve("skeinday.mv.db");
        switch (round % 4) {
            case 0 -> Files.deleteIfExists(database);
            case 1 -> cut(database, 0);
            case 2 -> cut(database, Files.size(database) / 2);
            default -> cut(database, Math.max(0, Files.size(database) - 1));
        }
        harmFolder(data, round);
        if (round % 3 == 1) {
            killWhile("serve", "--data", data.toString());
            startsKilled++;
        }
        if (round % 4 == 2) {
            killWhile("rebuild", "--data", data.toString());
            rebuildsKilled++;
        }
    }

    /** An empty join code is made anew; lost people end the start and are put back from where they were. */
    private void harmFolder(Path data, int round) throws Exception {
        if (round % 4 == 1) {
            cut(data.resolve("join-code"), 0);
        }
        if (round % 4 == 3) {
            Path people = data.resolve("people.json");
            byte[] kept = Files.readAllBytes(people);
            if (round % 8 == 3) {
                Files.delete(people);
            } else {
                Files.writeString(people, "{}");
            }
            var said = Program.listen("serve", "--data", data.toString());
            assertEquals(5, said.exitCode(), said.text());
            Files.write(people, kept);
        }
    }

    /** A first start is killed at any of its writes, and once more: the next one serves a day as it should be. */
    @Test
    void killed_while_it_starts_for_the_first_time_the_next_start_serves() throws Exception {
        for (int round = 0; round < Math.max(2, ROUNDS / 4); round++) {
            Path data = root.resolve("first-" + round);
            for (int kill = 0; kill < 2; kill++) {
                Process process = Program.begin("serve", "--data", data.toString(), "--port", "0");
                long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
                while (!Files.exists(data.resolve("lock")) && System.nanoTime() < until) {
                    Thread.sleep(1);
                }
                if (kill == 0) {
                    untilFiles(data, 1 + round % FIRST_FILES, until); // at each of its writes in turn
                } else {
                    Thread.sleep(random.nextLong(0, 700));
                }
                process.destroyForcibly().waitFor();
            }
            int port = Program.freePort();
            try (Program program = Program.serve(data, port)) {
                assertEquals(
                        422,
                        new Visitor(port, "", 4)
                                .form("/join", Map.of("token", "", "role", "captain", "person", ""))
                                .statusCode());
                assertEquals(200, new Visitor(port, "", 5).get("/").statusCode(), "seed " + SEED);
                assertTrue(Files.readString(data.resolve("join-code")).matches("[0-9a-f]{32}"));
                program.kill();
            }
            assertEquals(0, Program.run("verify", "--data", data.toString()));
        }
    }

    private static void untilFiles(Path data, int files, long until) throws Exception {
        while (Files.exists(data) && System.nanoTime() < until) {
            try (var there = Files.list(data)) {
                if (there.count() >= files) {
                    return;
                }
            }
            Thread.sleep(1);
        }
    }

    private static void cut(Path file, long length) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.truncate(length);
        }
    }

    private void killWhile(String... arguments) throws Exception {
        Process process = Program.begin(arguments);
        process.waitFor(random.nextLong(200, 1500), TimeUnit.MILLISECONDS);
        process.destroyForcibly().waitFor();
    }

    /** At the end all is sent again: then the record holds exactly what the clients sent, and the export shows it. */
    private void allTold(Path data, int port, TapLoad load) throws Exception {
        try (Program program = Program.serve(data, port)) {
            Visitor client = new Visitor(port, "", 3);
            var all = load.sent.values().stream().toList();
            for (int from = 0; from < all.size(); from += 50) {
                ArrayNode taps = Json.MAPPER.createArrayNode();
                all.subList(from, Math.min(all.size(), from + 50)).forEach(taps::add);
                load.send(client, taps);
            }
            assertEquals(List.of(), load.surprises());
            assertEquals(load.sent.size(), load.saved.size());
            program.kill();
        }
        Path out = root.resolve("out");
        assertEquals(0, Program.run("export", out.toString(), "--data", data.toString()));
        assertEquals(0, Program.run("verify", "--data", data.toString()));
        assertEquals(durations(load), exported(out), "each duration stands once in the export");
        assertTrue(load.saved.size() > ROUNDS, "the clients were answered at all");
    }

    private static NavigableSet<Long> durations(TapLoad load) {
        TreeSet<Long> all = new TreeSet<>();
        for (ObjectNode tap : load.sent.values()) {
            all.add(tap.path("content").path("ms").asLong());
        }
        return all;
    }

    private static NavigableSet<Long> exported(Path out) throws IOException {
        List<String> lines = Files.readAllLines(out.resolve("readings.csv"));
        int column = List.of(lines.get(0).split(",")).indexOf("time");
        TreeSet<Long> all = new TreeSet<>();
        for (String line : lines.subList(1, lines.size())) {
            assertTrue(all.add(ms(line.split(",")[column])), "twice: " + line);
        }
        return all;
    }

    private static long ms(String text) {
        return org.skeinday.units.FlightTime.parse(text).millis();
    }
}
