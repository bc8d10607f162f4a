package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Program;
import org.skeinday.Visitor;

/** What the program says when it cannot start, and by which code it ends. */
@Timeout(240)
class StartFaultIT {
    @TempDir
    Path root;

    private Path flown() throws Exception {
        Path data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        int port = Program.freePort();
        try (Program program = Program.serve(data, port)) {
            CalledForTests.call(new Visitor(port, "", 1));
        }
        return data;
    }

    @Test
    void a_second_start_is_told_where_the_first_runs_and_a_lock_left_by_a_kill_does_not_block() throws Exception {
        Path data = flown();
        int port = Program.freePort();
        try (Program program = Program.serve(data, port)) {
            String files = root.resolve("files").toString();
            for (List<String> command : List.of(
                    List.of("serve"),
                    List.of("restore", backupIn(data).toString()),
                    List.of("import", "demo-data"),
                    List.of("export", files),
                    List.of("verify"),
                    List.of("rebuild"))) {
                List<String> whole = new ArrayList<>(command);
                whole.addAll(List.of("--data", data.toString()));
                var said = Program.listen(whole.toArray(String[]::new));
                assertEquals(4, said.exitCode(), command + ": " + said.text());
                assertTrue(said.text().contains("already running at http://localhost:" + port), said.text());
            }
            program.kill();
        }
        try (Program again = Program.serve(data, port)) {
            assertEquals(200, new Visitor(port, "", 2).get("/").statusCode());
            var said = Program.listen("serve", "--data", data.toString());
            assertEquals(4, said.exitCode(), "after the kill too: " + said.text());
            again.kill();
        }
    }

    private static Path backupIn(Path data) throws IOException {
        try (Stream<Path> made = Files.list(data.resolve("backups"))) {
            return made.findFirst().orElseThrow();
        }
    }

    @Test
    void of_two_that_start_in_one_moment_one_serves() throws Exception {
        Path data = flown();
        int one = Program.freePort();
        Process first = Program.begin("serve", "--data", data.toString(), "--port", String.valueOf(one));
        Process second = Program.begin("serve", "--data", data.toString(), "--port", String.valueOf(one));
        try {
            var ended = CompletableFuture.anyOf(first.onExit(), second.onExit());
            Process refused = (Process) ended.get(60, TimeUnit.SECONDS);
            assertEquals(4, refused.exitValue());
            Process serving = refused.pid() == first.pid() ? second : first;
            Program.ready(serving, one);
            assertEquals(200, new Visitor(one, "", 2).get("/").statusCode());
        } finally {
            first.destroyForcibly().waitFor();
            second.destroyForcibly().waitFor();
        }
    }

    @Test
    void a_port_in_use_is_said_with_what_to_do() throws Exception {
        int port = Program.freePort();
        try (Program program = Program.serve(root.resolve("one"), port)) {
            var said =
                    Program.listen("serve", "--data", root.resolve("two").toString(), "--port", String.valueOf(port));
            assertEquals(3, said.exitCode(), said.text());
            assertTrue(said.text().contains("Port " + port + " is in use. Name another one"), said.text());
            assertFalse(Files.exists(root.resolve("two")), "no record is begun for it");
            program.kill();
        }
    }

    @Test
    void a_journal_that_was_cut_or_changed_stops_the_start_and_names_the_record() throws Exception {
        Path data = flown();
        Path journal = data.resolve("journal.jsonl");
        List<String> lines = Files.readAllLines(journal);

        Files.writeString(journal, String.join("\n", lines.subList(0, lines.size() - 1)) + "\n");
        assertDamaged(data, "record " + lines.size() + ": the journal was cut");

        Files.writeString(journal, String.join("\n", lines).replace("\"slot\":1", "\"slot\":2") + "\n");
        assertDamaged(data, "record " + lines.size() + ":");

        Files.delete(journal);
        assertDamaged(data, "journal.jsonl is missing");
    }

    /** Bytes that are no text in any writing of ours, in each small file of the folder. */
    @Test
    void garbage_in_a_small_file_is_one_sentence_or_made_anew() throws Exception {
        Path data = flown();
        byte[] garbage = {(byte) 0xff, 0, (byte) 0xfe, '\n', 7};
        byte[] format = Files.readAllBytes(data.resolve("record-format"));
        Files.write(data.resolve("record-format"), garbage);
        assertDamaged(data, "record-format holds no number");
        Files.write(data.resolve("record-format"), format);
        for (String file : List.of("port", "host", "second-place", "join-code", "typed-codes")) {
            Files.write(data.resolve(file), garbage);
        }
        try (Program busy = Program.serve(root.resolve("other"), 8420)) {
            var said = Program.listen("serve", "--data", data.toString());
            assertEquals(3, said.exitCode(), said.text());
            assertTrue(said.text().contains("Port 8420 is in use"), "the usual one: " + said.text());
            busy.kill();
        }
        int port = Program.freePort();
        try (Program program = Program.serve(data, port)) {
            String now = new Visitor(port, "", 2).get("/devices").body();
            assertTrue(now.contains("Devices"), now);
            program.kill();
        }
    }

    private void assertDamaged(Path data, String words) throws IOException, InterruptedException {
        for (String command : List.of("serve", "verify")) {
            var said = Program.listen(command, "--data", data.toString());
            assertEquals(5, said.exitCode(), command + ": " + said.text());
            if (command.equals("serve")) {
                assertTrue(said.text().contains(words), said.text());
            }
        }
    }
}
