package org.skeinday.load;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;

/**
 * A record of 100,000 acts: how long the database takes to be built anew, and the program to start on it, closed in good
 * order, killed with a sealed copy of the database and killed without one; beside the bare least, which is to read every
 * line as JSON. Prints figures, asserts none.
 */
class RebuildBenchmark {
    private static final int ACTS = Integer.getInteger("skeinday.rebuild.acts", 100_000);
    private static final int AT_ONCE = 50;
    private static final List<String> AS_A_LAPTOP = List.of("-XX:TieredStopAtLevel=4");

    @TempDir
    Path root;

    private final LoadFigures figures = new LoadFigures();
    private Path data;

    @Test
    void a_season_of_acts_is_built_anew_and_started_on() throws Exception {
        data = root.resolve("day");
        try (Hall hall = new Hall(root, 100)) {
            fill(hall);
        }
        seconds("start, closed in good order", "≤ 3 s", this::startAndClose);
        startAndKill();
        seconds("start after a kill, from the sealed copy", "≤ 5 s", this::startAndKill);
        seconds(
                "start after a kill without a copy: built anew",
                "",
                this::startWithoutCopyAndKill,
                this::startAndClose);
        seconds("rebuild, with Java's own start", "≤ 8 s", () -> run("rebuild"));
        seconds("verify, with Java's own start", "≤ 12 s", () -> run("verify"));
        seconds("bare: every line read as JSON", "", this::readBare);
        System.out.println(Files.size(data.resolve("journal.jsonl")) / 1_000_000 + " MB of journal, "
                + Files.size(data.resolve("skeinday.mv.db")) / 1_000_000 + " MB of database");
        System.out.println(figures.text());
    }

    private static void fill(Hall hall) throws Exception {
        ExecutorService four = Executors.newFixedThreadPool(4);
        List<Hall.Timekeeper> all = hall.timekeepers();
        List<Callable<Void>> posts = IntStream.range(0, ACTS / AT_ONCE)
                .<Callable<Void>>mapToObj(i -> () -> {
                    post(all.get(i % all.size()), i);
                    return null;
                })
                .toList();
        for (Future<Void> done : four.invokeAll(posts)) {
            done.get();
        }
        four.shutdown();
    }

    private static void post(Hall.Timekeeper timekeeper, int number) throws IOException, InterruptedException {
        Visitor device = timekeeper.visitor();
        ArrayNode taps = Json.MAPPER.createArrayNode();
        for (int i = 0; i < AT_ONCE; i++) {
            ObjectNode content = Json.MAPPER.createObjectNode();
            content.put("attempt", timekeeper.attempt()).put("slot", timekeeper.slot());
            content.put("ms", 60_000 + number * AT_ONCE + i);
            taps.add(Visitor.tap(String.format("%032x", (long) number * AT_ONCE + i + 1), "watch.landing", content));
        }
        device.taps(taps).forEach(answer -> {
            if (!answer.path("state").asText().equals("saved")) {
                throw new IllegalStateException(answer.toString());
            }
        });
    }

    /** Something that is timed; each is done three times, and the middle one counts. */
    private interface Deed {
        double seconds() throws Exception;
    }

    private void seconds(String what, String target, Deed... deeds) throws Exception {
        double[] three = new double[3];
        for (int i = 0; i < 3; i++) {
            three[i] = deeds[0].seconds();
        }
        java.util.Arrays.sort(three);
        figures.add(what, target, String.format(Locale.ROOT, "%.2f s", three[1]));
        for (int i = 1; i < deeds.length; i++) {
            deeds[i].seconds(); // leaves the folder as the next needs it
        }
    }

    private double startAndClose() throws Exception {
        return start(false);
    }

    private double startAndKill() throws Exception {
        return start(true);
    }

    private double startWithoutCopyAndKill() throws Exception {
        try (Stream<Path> files = Files.list(data)) {
            for (Path copy : files.filter(file -> file.getFileName().toString().startsWith("database-copy-"))
                    .toList()) {
                Files.delete(copy);
            }
        }
        return startAndKill();
    }

    private double start(boolean kill) throws Exception {
        int port = Program.freePort();
        long begun = System.nanoTime();
        try (Program program = Program.serve(data, port, AS_A_LAPTOP)) {
            new Visitor(port, "", 1).get("/");
            double took = (System.nanoTime() - begun) / 1e9;
            if (kill) {
                program.kill();
            }
            return took;
        }
    }

    private double run(String command) throws Exception {
        long begun = System.nanoTime();
        var said = Program.listenWith(AS_A_LAPTOP, command, "--data", data.toString());
        if (said.exitCode() != 0) {
            throw new IOException(said.text());
        }
        return (System.nanoTime() - begun) / 1e9;
    }

    private double readBare() throws IOException {
        long begun = System.nanoTime();
        try (BufferedReader lines = Files.newBufferedReader(data.resolve("journal.jsonl"))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                Json.MAPPER.readTree(line);
            }
        }
        return (System.nanoTime() - begun) / 1e9;
    }
}
