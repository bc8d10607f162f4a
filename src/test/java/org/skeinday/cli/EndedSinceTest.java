package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;

/** A backup brings back devices that were ended since: whoever restores it is told. */
@Timeout(120)
class EndedSinceTest {
    @TempDir
    Path root;

    private String run(String... words) {
        var out = new StringWriter();
        assertEquals(0, Skeinday.run(words, new PrintWriter(out, true), new PrintWriter(out, true), Commands.all()));
        return out.toString();
    }

    private static List<Path> backups(Path day) throws IOException {
        try (Stream<Path> all = Files.list(day.resolve("backups"))) {
            return all.sorted().toList();
        }
    }

    @Test
    void a_device_that_was_ended_after_the_backup_is_told() throws Exception {
        Path day = root.resolve("day");
        try (App app = Demo.start(day)) {
            Demo.joined(app, "helper", "", 1);
            Demo.joined(app, "viewer", "", 2);
        }
        Path both = backups(day).get(backups(day).size() - 1);
        try (App app = Demo.startEmpty(day)) {
            Visitor laptop = new Visitor(app.port(), "", 3);
            Matcher device = Pattern.compile("/devices/([^/\"]+)/end")
                    .matcher(laptop.get("/devices").body());
            assertTrue(device.find());
            assertEquals(
                    204,
                    laptop.form("/devices/" + device.group(1) + "/end", Map.of())
                            .statusCode());
        }
        Path one = backups(day).get(backups(day).size() - 1);
        String told = "Devices that were ended after this backup and are joined again: 1.";
        assertFalse(run("restore", one.toString(), "--data", day.toString()).contains("joined again"));
        Files.writeString(
                day.resolve("journal.jsonl"), "garbage \"device.ended\"\n", java.nio.file.StandardOpenOption.APPEND);
        assertTrue(run("restore", both.toString(), "--data", day.toString()).contains(told));
        assertFalse(
                run("restore", both.toString(), "--data", day.toString()).contains("joined again"), "none any more");
    }
}
