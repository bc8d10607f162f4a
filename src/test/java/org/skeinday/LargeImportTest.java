package org.skeinday;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.cli.Skeinday;
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

    /** The page does not wait for the end: it says how far it is, and all that it tells is still the time before. */
    @Test
    void pages_answer_while_it_is_written_and_show_all_of_it_afterwards_or_nothing_before() throws Exception {
        try (App app = Demo.startEmpty(root.resolve("day"))) {
            var laptop = new Visitor(app.port(), "", 26);
            String act = laptop.newId();
            byte[] files = Bundle.write("large", LargeFiles.of(ROWS)).getBytes(StandardCharsets.UTF_8);
            String told = taken(laptop.upload("/import/take", "large.json", files, Map.of("act", act)));
            int readMeanwhile = 0;
            while (told.contains("Taking them in")) {
                assertTrue(told.contains("/import/told?act=" + act), told);
                HttpResponse<String> page = laptop.get("/prepare/motors");
                assertEquals(200, page.statusCode(), page.body());
                told = laptop.get("/import/told?act=" + act).body();
                if (told.contains("Taking them in")) {
                    assertFalse(page.body().contains("M1999"), "half an act is shown: " + page.body());
                    readMeanwhile++;
                }
            }
            System.out.println("Pages read while " + ROWS + " motors were taken in: " + readMeanwhile);
            assertTrue(readMeanwhile > 0, "no page was read meanwhile: the test says nothing");
            assertTrue(told.contains("All of it is in the record now"), told);
            assertTrue(laptop.get("/export.zip").statusCode() < 500);
        }
    }

    private static String taken(HttpResponse<String> answer) {
        assertEquals(200, answer.statusCode(), answer.body());
        return answer.body();
    }
}
