package org.skeinday.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.platform.record.Json;

/** Names of people that nobody has any more: the coach says that they are gone, and the day goes on. */
@Timeout(120)
class LostPeopleTest {
    @TempDir
    Path root;

    private Path day;
    private String said = "";

    @BeforeEach
    void fill() throws IOException {
        day = Demo.into(root.resolve("day"));
    }

    private int run(String... words) {
        var out = new StringWriter();
        String[] all = java.util.Arrays.copyOf(words, words.length + 2);
        all[words.length] = "--data";
        all[words.length + 1] = day.toString();
        int code = Skeinday.run(all, new PrintWriter(out, true), new PrintWriter(out, true), Commands.all());
        said = out.toString();
        return code;
    }

    private int names() throws IOException {
        return Json.MAPPER
                .readTree(day.resolve("people.json").toFile())
                .path("names")
                .size();
    }

    private int lost() {
        assertEquals(5, run("lost-people"), said);
        Matcher number = Pattern.compile("lost-people --erase (\\d+) --data").matcher(said);
        assertTrue(number.find(), said);
        return Integer.parseInt(number.group(1));
    }

    private List<String> record() throws IOException {
        return Files.readAllLines(day.resolve("journal.jsonl"));
    }

    @Test
    void people_that_no_backup_has_are_erased_once_the_coach_says_how_many() throws Exception {
        int crew = names();
        Files.delete(day.resolve("people.json"));
        assertEquals(5, run("verify"), said);
        assertTrue(said.contains("go on without them: lost-people --data " + day), said);
        List<String> before = record();
        assertEquals(crew, lost());
        for (String wrong : new String[] {"0", "1", String.valueOf(crew + 1)}) {
            assertEquals(2, run("lost-people", "--erase", wrong), said);
            assertTrue(said.contains("must be the number of people whose names nobody has, " + crew), said);
        }
        assertEquals(before, record(), "nothing was written so far");
        assertEquals(0, run("lost-people", "--erase", String.valueOf(crew)), said);
        assertEquals(before.size() + 1, record().size(), "one act");
        assertEquals(0, run("verify"), said);
        assertEquals(0, run("lost-people"), said);
        try (App app = Demo.startEmpty(day)) {
            assertFalse(app.newPin().isEmpty(), "the PIN stood there, too");
        }
        assertEquals(0, run("verify"), said);
        assertEquals(0, run("backup"), said);
    }

    @Test
    void names_that_a_backup_has_come_back_and_the_others_only_are_erased() throws Exception {
        assertEquals(0, run("backup"), said);
        String added = Files.readString(day.resolve("people.json"));
        Path files = Files.createDirectories(root.resolve("files"));
        Files.writeString(files.resolve("crew.csv"), "name\nNewcomer\n");
        assertEquals(
                0,
                Skeinday.run(
                        new String[] {"import", files.toString(), "--data", day.toString()},
                        new PrintWriter(System.out, true, UTF_8),
                        new PrintWriter(System.err, true, UTF_8),
                        Commands.all()));
        Files.writeString(day.resolve("people.json"), "[]");
        assertEquals(1, lost());
        assertEquals(0, run("lost-people", "--erase", "1"), said);
        assertTrue(said.contains("came back from backups, 1 people were recorded"), said);
        assertEquals(Json.MAPPER.readTree(added).path("names").size(), names());
        assertEquals(0, run("verify"), said);
        try (var all = Files.list(day)) {
            assertTrue(all.anyMatch(file -> file.getFileName().toString().startsWith("people-set-aside-")));
        }
    }

    @Test
    void a_folder_that_lacks_nobody_is_left_alone() throws Exception {
        List<String> before = record();
        assertEquals(0, run("lost-people"), said);
        assertTrue(said.contains("No name is lost"), said);
        assertEquals(2, run("lost-people", "--erase", "1"), said);
        assertEquals(before, record());
    }
}
