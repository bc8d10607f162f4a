package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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

/** Memory really runs out in the handlers: nothing that was saved is lost, and the program serves again afterwards. */
@NeedsQuiet
@Timeout(300)
class MemoryFaultIT {
    private static final int FILES = 8;

    @TempDir
    Path root;

    @Test
    void memory_that_runs_out_in_handlers_loses_nothing_that_was_saved_and_is_outlived() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        TapLoad load;
        try (Program program = Program.serve(data, port, List.of("-Xmx44m"))) {
            load = new TapLoad(port, CalledForTests.call(new Visitor(port, "", 1)));
            load.begin(7);
            bigFiles(port);
            load.end();
            assertEquals(200, afterwards(new Visitor(port, "", 9)), () -> "it serves again; it " + last(program));
            int before = load.saved.size();
            load.begin(8);
            for (int i = 0; i < 6_000 && load.saved.size() == before; i++) {
                Thread.sleep(10);
            }
            load.end();
            assertTrue(load.saved.size() > before, () -> "it takes entries again; it " + last(program));
            boolean ranOut = program.said().stream().anyMatch(line -> line.contains("OutOfMemoryError"));
            program.kill();
            assertKept(data, load);
            Assumptions.assumeTrue(ranOut, "Memory did not run out here; what was saved was there");
        }
        assertEquals(0, Program.run("verify", "--data", data.toString()));
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

    /** Files as large as an import may be, all looked through at once. */
    private static void bigFiles(int port) throws InterruptedException {
        byte[] file =
                ("name,division\n" + "A model with a name,open\n".repeat(180_000)).getBytes(StandardCharsets.UTF_8);
        List<Thread> all = new ArrayList<>();
        for (int i = 0; i < FILES; i++) {
            Visitor one = new Visitor(port, "", 100 + i);
            all.add(new Thread(() -> {
                try {
                    one.upload("/import/look", "models.csv", file, Map.of());
                } catch (IOException | InterruptedException e) {
                    // it may well be cut
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
