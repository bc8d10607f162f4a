package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.exchange.Bundle;

/** Files that are larger than any season, taken in whole: by the command, and on the page while others read. */
@Timeout(240)
class LargeImportTest {
    private static final int ROWS = 2_000;

    @TempDir
    Path root;

    @Test
    void thousands_of_motors_and_flights_are_one_act_and_the_command_waits_for_its_result() throws Exception {
        var out = new StringWriter();
        var err = new StringWriter();
        int code = Skeinday.run(
                new String[] {
                    "import",
                    LargeFiles.into(root.resolve("files"), ROWS).toString(),
                    "--data",
                    root.resolve("data").toString()
                },
                new PrintWriter(out, true),
                new PrintWriter(err, true),
                Commands.all());
        assertEquals(0, code, err.toString());
        assertTrue(out.toString().contains("motors.csv: " + ROWS), out.toString());
        assertTrue(out.toString().contains("Taken in as record 1."), out.toString());
        assertFalse(err.toString().contains("could not be applied"), err.toString());
    }

    /** Readers see the time before or all of it, and none of them waits for its end. */
    @Test
    void pages_answer_while_it_is_written_and_show_all_of_it_or_nothing() throws Exception {
        try (App app = Demo.startEmpty(root.resolve("day"))) {
            var laptop = new Visitor(app.port(), "", 26);
            CompletableFuture<String> told = CompletableFuture.supplyAsync(() -> taken(app.port()));
            int readMeanwhile = 0;
            while (!told.isDone()) {
                HttpResponse<String> page = laptop.get("/prepare/motors");
                assertEquals(200, page.statusCode(), page.body());
                boolean some = page.body().contains(">M0<");
                assertEquals(some, page.body().contains(">M1<"), "half an act is shown: " + page.body());
                readMeanwhile += told.isDone() ? 0 : 1;
            }
            System.out.println("Pages read while " + ROWS + " motors were taken in: " + readMeanwhile);
            assertTrue(told.get().contains("All of it is in the record now"), told.get());
            assertTrue(readMeanwhile > 0, "no page was read meanwhile: the test says nothing");
        }
    }

    /** What the page says in the end, however long it asks again. */
    private static String taken(int port) {
        var coach = new Visitor(port, "", 27);
        String act = coach.newId();
        byte[] files = Bundle.write("large", LargeFiles.of(ROWS)).getBytes(StandardCharsets.UTF_8);
        try {
            String told = coach.upload("/import/take", "large.json", files, Map.of("act", act))
                    .body();
            while (told.contains("Taking them in")) {
                told = coach.get("/import/told?act=" + act).body();
            }
            return told;
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
