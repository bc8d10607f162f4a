package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Program;
import org.skeinday.Visitor;

/** The program is killed while it restores: the folder is the old record, the restored one, or refuses; never a fresh day. */
@Timeout(1200)
class KilledRestoreFaultIT {
    private static final int ROUNDS = Math.max(2, Integer.getInteger("skeinday.rounds", 8) / 4);
    private static final long SEED = Long.getLong("skeinday.seed", 20_261_127L);

    @TempDir
    Path root;

    private Path data;

    @Test
    void killed_while_it_restores_the_record_is_the_old_or_the_new_one_and_a_second_try_restores() throws Exception {
        data = root.resolve("day");
        assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
        assertEquals(0, Program.run("backup", root.resolve("stick").toString(), "--data", data.toString()));
        Path backup;
        try (Stream<Path> made = Files.list(root.resolve("stick"))) {
            backup = made.findFirst().orElseThrow();
        }
        fly();
        long older = lines(backup.resolve("journal.jsonl"));
        long newer = lines(data.resolve("journal.jsonl"));
        assertTrue(newer > older);
        SplittableRandom random = new SplittableRandom(SEED);
        for (int round = 0; round < ROUNDS; round++) {
            Process restoring = Program.begin("restore", backup.toString(), "--data", data.toString());
            restoring.waitFor(random.nextLong(200, 900), TimeUnit.MILLISECONDS);
            restoring.destroyForcibly().waitFor();
            var said = Program.listen("verify", "--data", data.toString());
            List<String> either = List.of(older + " records", newer + " records");
            assertTrue(
                    said.exitCode() == 5 || either.stream().anyMatch(said.text()::startsWith),
                    "seed " + SEED + " round " + round + ": " + said.exitCode() + " " + said.text());
        }
        assertEquals(0, Program.run("restore", backup.toString(), "--data", data.toString()));
        assertEquals(0, Program.run("verify", "--data", data.toString()));
        assertEquals(older, lines(data.resolve("journal.jsonl")));
    }

    private void fly() throws Exception {
        int port = Program.freePort();
        try (Program program = Program.serve(data, port)) {
            CalledForTests.call(new Visitor(port, "", 1));
            program.kill();
        }
    }

    private static long lines(Path journal) throws IOException {
        return Files.readAllLines(journal).size();
    }
}
