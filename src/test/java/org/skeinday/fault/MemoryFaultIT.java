package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.house.NeedsQuiet;
import org.skeinday.platform.record.Json;

/** Little memory: files do not take it from everybody, and where it really runs out, nothing that was saved is lost. */
@NeedsQuiet
@Timeout(300)
class MemoryFaultIT {
    private static final int FILES = 8;
    private static final int READERS = 40;

    @TempDir
    Path root;

    @Test
    void files_larger_than_the_memory_to_spare_are_refused_and_take_it_from_nobody() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        TapLoad load;
        try (Program program = Program.serve(data, port, List.of("-Xmx44m"))) {
            load = new TapLoad(port, CalledForTests.call(new Visitor(port, "", 1)));
            load.begin(7);
            List<String> told = bigFiles(port);
            assertEquals(FILES, told.size());
            told.forEach(words -> assertTrue(words.contains("Send less at once"), words));
            assertTakesMore(load, program);
            load.end();
            assertEquals(200, afterwards(new Visitor(port, "", 9)), () -> "it serves; it " + last(program));
            assertFalse(ranOut(program), () -> "memory was there; it " + last(program));
            program.kill();
        }
        assertKept(data, load);
        assertEquals(0, Program.run("verify", "--data", data.toString()));
    }

    @Test
    void memory_that_runs_out_loses_nothing_that_was_saved() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        TapLoad load;
        boolean ranOut;
        try (Program program = Program.serve(data, port, List.of("-Xmx24m"))) {
            load = new TapLoad(port, CalledForTests.call(new Visitor(port, "", 1)));
            load.begin(7);
            readers(port, program);
            load.end();
            ranOut = ranOut(program);
            program.kill();
        }
        assertKept(data, load);
        assertEquals(0, Program.run("verify", "--data", data.toString()));
        port = Program.freePort();
        try (Program program = Program.serve(data, port)) {
            assertEquals(200, new Visitor(port, "", 3).get("/results").statusCode());
        }
        Assumptions.assumeTrue(ranOut, "Memory did not run out here; what was saved was there");
    }

    private static boolean ranOut(Program program) {
        return program.said().stream().anyMatch(line -> line.contains("OutOfMemoryError"));
    }

    private static void assertTakesMore(TapLoad load, Program program) throws InterruptedException {
        int before = load.saved.size();
        for (int i = 0; i < 6_000 && load.saved.size() == before; i++) {
            Thread.sleep(10);
        }
        assertTrue(load.saved.size() > before, () -> "it takes entries; it " + last(program));
    }

    private static String last(Program program) {
        List<String> said = program.said();
        return "said last: " + String.join("\n", said.subList(Math.max(0, said.size() - 60), said.size()));
    }

    /** Collecting what the files left may take a while on a busy machine: it is asked up to twelve times. */
    private static int afterwards(Visitor again) throws IOException, InterruptedException {
        for (int i = 0; i < 12; i++) {
            try {
                return again.get("/results").statusCode();
            } catch (HttpTimeoutException e) {
                System.out.println("not yet: " + e.getMessage());
            }
        }
        return 0; // no answer, which no status says
    }

    /** Files as large as an import may be, all sent at once. @return what each was told */
    private static List<String> bigFiles(int port) throws InterruptedException {
        byte[] file =
                ("name,division\n" + "A model with a name,open\n".repeat(180_000)).getBytes(StandardCharsets.UTF_8);
        List<String> told = Collections.synchronizedList(new ArrayList<>());
        atOnce(FILES, i -> {
            HttpResponse<String> answer =
                    new Visitor(port, "", 100 + i).upload("/import/look", "models.csv", file, Map.of());
            told.add(answer.statusCode() + " " + answer.body());
        });
        return told;
    }

    /** The largest answers that there are, asked for by many until memory has run out, twelve times each at most. */
    private static void readers(int port, Program program) throws InterruptedException {
        atOnce(READERS, i -> {
            Visitor one = new Visitor(port, "", 200 + i);
            for (int k = 0; k < 12 && !ranOut(program); k++) {
                one.get("/export.xlsx");
            }
        });
    }

    /** What may be cut. */
    private interface Asking {
        void ask(int i) throws IOException, InterruptedException;
    }

    private static void atOnce(int many, Asking asking) throws InterruptedException {
        List<Thread> all = new ArrayList<>();
        for (int i = 0; i < many; i++) {
            int nth = i;
            all.add(new Thread(() -> {
                try {
                    asking.ask(nth);
                } catch (IOException | InterruptedException e) {
                    System.out.println("cut: " + e);
                }
            }));
        }
        all.forEach(Thread::start);
        for (Thread one : all) {
            one.join();
        }
    }

    private static void assertKept(Path data, TapLoad load) throws IOException {
        Set<String> acts = new HashSet<>();
        for (String line : Files.readAllLines(data.resolve("journal.jsonl"))) {
            JsonNode record = Json.MAPPER.readTree(line);
            acts.add(record.path("act").asText());
        }
        load.saved.keySet().forEach(id -> assertTrue(acts.contains(id), "tap " + id));
    }
}
