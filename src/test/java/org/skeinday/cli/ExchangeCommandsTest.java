package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Catalogue;
import org.skeinday.exchange.DayFiles;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Json;

class ExchangeCommandsTest {
    @TempDir
    Path root;

    private Path data;
    private Path out;
    private String said = "";
    private String complained = "";

    @BeforeEach
    void nameTheFolders() {
        data = root.resolve("data");
        out = root.resolve("out");
    }

    private int run(String... arguments) {
        var to = new StringWriter();
        var err = new StringWriter();
        int code = Skeinday.run(arguments, new PrintWriter(to, true), new PrintWriter(err, true), Commands.all());
        said = to.toString();
        complained = err.toString();
        return code;
    }

    private int load(Path dir, String... more) {
        return run(Stream.concat(Stream.of("import", dir.toString(), "--data", data.toString()), Stream.of(more))
                .toArray(String[]::new));
    }

    private int save(Path dir, String... more) {
        return run(Stream.concat(Stream.of("export", dir.toString(), "--data", data.toString()), Stream.of(more))
                .toArray(String[]::new));
    }

    private void demo() {
        assertEquals(0, load(Path.of("demo-data")), complained);
    }

    private static SortedMap<String, String> contents(Path dir) throws Exception {
        var contents = new TreeMap<String, String>();
        try (Stream<Path> files = Files.list(dir)) {
            for (Path file : files.toList()) {
                contents.put(file.getFileName().toString(), Files.readString(file));
            }
        }
        return contents;
    }

    private Path folder(String name, String file, String text) throws Exception {
        Path dir = Files.createDirectories(root.resolve(name));
        Files.writeString(dir.resolve(file), text);
        return dir;
    }

    @Test
    void a_workbook_goes_out_and_comes_in_as_the_same_files() throws Exception {
        demo();
        Path workbook = root.resolve("season.xlsx");
        assertEquals(0, save(workbook), complained);
        assertEquals(0, save(workbook), complained); // in the place of the one before
        assertEquals(0, save(out), complained);
        SortedMap<String, String> files = contents(out);
        data = root.resolve("other");
        assertEquals(0, load(workbook), complained);
        out = root.resolve("again");
        assertEquals(0, save(out), complained);
        assertEquals(files, contents(out));
    }

    @Test
    void what_is_no_workbook_is_not_taken_and_says_why() throws Exception {
        Path wrong = folder("wrong", "season.xlsx", "a,b").resolve("season.xlsx");
        assertEquals(2, load(wrong));
        assertTrue(complained.contains("season.xlsx: this is no workbook that can be read"), complained);
        assertEquals(2, load(root.resolve("none.xlsx")));
        assertTrue(complained.contains("There is no workbook"), complained);
    }

    @Test
    void an_event_goes_out_as_a_bundle_and_comes_in_elsewhere_and_a_bad_cell_names_its_table() throws Exception {
        demo();
        Path bundle = root.resolve("event.json");
        assertEquals(0, run("export", bundle.toString(), "--event", "Saltmarsh Rotor Day", "--data", data.toString()));
        JsonNode json = Json.MAPPER.readTree(bundle.toFile());
        assertEquals("Saltmarsh Rotor Day", json.path("about").asText());
        assertEquals(1, json.path("tables").path("event").size());
        Path bad = root.resolve("bad.json");
        Files.writeString(bad, Files.readString(bundle).replaceFirst("\"hosting\"|\"visiting\"", "\"party\""));
        assertEquals(
                2, run("import", bad.toString(), "--data", root.resolve("other").toString()));
        assertTrue(complained.contains("bad.json, event line 2, column \"kind\""), complained);
        assertEquals(
                0,
                run("import", bundle.toString(), "--data", root.resolve("other").toString()),
                complained);
        assertEquals(2, run("export", bundle.toString(), "--event", "Nothing", "--data", data.toString()));
        assertTrue(complained.contains("There is no event 'Nothing'; there are "), complained);
    }

    @Test
    void every_table_goes_out_and_a_season_alone() {
        demo();
        Path tables = root.resolve("tables.xlsx");
        assertEquals(0, run("export", tables.toString(), "--tables", "--data", data.toString()), complained);
        assertTrue(said.contains("motor-batch.csv: 3"), said);
        assertEquals(
                0,
                run("export", root.resolve("s.json").toString(), "--season", "1999-09-01", "--data", data.toString()),
                complained);
        assertTrue(said.contains("event.csv: 0"), said);
        assertEquals(
                2,
                run("export", "x.json", "--season", "1999-09-01", "--tables", "--data", data.toString()),
                "one of them");
    }

    @Test
    void import_counts_the_rows_of_each_file() {
        demo();
        assertTrue(said.contains("motors.csv: 14\n"), said);
        assertTrue(said.endsWith("Taken in as record 1.\n"), said);
    }

    @Test
    void import_says_the_same_as_one_object() throws Exception {
        assertEquals(0, load(Path.of("demo-data"), "--json"));
        JsonNode json = Json.MAPPER.readTree(said);
        assertEquals(1, json.get("record").asInt());
        assertEquals(0, json.get("errors").size());
        assertEquals("event.csv", json.get("files").get(0).get("file").asText());
        assertEquals(2, json.get("files").get(0).get("rows").asInt());
        assertEquals("", complained);
    }

    @Test
    void a_failing_import_names_file_line_column_what_is_wrong_and_what_would_be_right() throws Exception {
        Path dir = folder("in", "batches.csv", "batch,k\nA,1\n");
        assertEquals(2, load(dir, "--json"));
        JsonNode error = Json.MAPPER.readTree(said).get("errors").get(0);
        assertEquals("batches.csv", error.get("file").asText());
        assertEquals(2, error.get("line").asInt());
        assertEquals("k", error.get("column").asText());
        assertEquals("'1' is out of bounds", error.get("wrong").asText());
        assertEquals("write a number from 10 to 100", error.get("right").asText());
        assertEquals(2, load(dir));
        assertEquals(
                "Nothing was taken.\nbatches.csv line 2, column \"k\": '1' is out of bounds; write a number from 10 to"
                        + " 100\n",
                complained);
        assertEquals("", said);
        assertEquals(0, Files.size(data.resolve("journal.jsonl")));
    }

    @Test
    void a_csv_file_that_is_not_known_is_never_passed_over_in_silence() throws Exception {
        Path dir = folder("in", "batches.csv", "batch\nA\n");
        folder("in", "notes.txt", "not ours");
        folder("in", "motor.csv", "tag\n");
        assertEquals(2, load(dir));
        assertTrue(complained.contains("motor.csv: this file is not known; did you mean 'motors.csv'?"), complained);
        Files.delete(dir.resolve("motor.csv"));
        assertEquals(0, load(dir), complained);
    }

    @Test
    void names_of_files_may_be_in_capitals_and_their_letters_of_windows() throws Exception {
        Path dir = Files.createDirectories(root.resolve("in"));
        Files.write(dir.resolve("Crew.CSV"), "name;tasks\nJ\u00f6rn;winds\n".getBytes(Charset.forName("windows-1252")));
        assertEquals(0, load(dir), complained);
        assertEquals(0, save(out));
        assertEquals(
                "name,event,tasks,clean winds,team\nJ\u00f6rn,,winds,,\n", Files.readString(out.resolve("crew.csv")));
    }

    @Test
    void a_folder_that_is_not_there_is_a_usage_error() {
        assertEquals(2, load(root.resolve("none")));
        assertTrue(complained.contains("There is no folder"), complained);
    }

    @Test
    void export_and_import_and_export_give_the_same_bytes() throws Exception {
        demo();
        assertEquals(0, save(out, "--json"), complained);
        JsonNode json = Json.MAPPER.readTree(said);
        assertEquals(out.toString(), json.get("folder").asText());
        assertEquals(DayFiles.known().size(), json.get("files").size());
        var first = contents(out);
        assertEquals(new TreeSet<>(DayFiles.known()), first.keySet());
        data = root.resolve("second");
        assertEquals(0, load(out), complained);
        assertEquals(0, save(root.resolve("out-2")));
        assertEquals(first, contents(root.resolve("out-2")));
    }

    @Test
    void export_replaces_an_earlier_export_and_leaves_nothing_beside_it() throws Exception {
        demo();
        assertEquals(0, save(out));
        var first = contents(out);
        Files.writeString(out.resolve("crew.csv"), "changed");
        Files.delete(out.resolve("event.csv"));
        assertEquals(0, save(out), complained);
        assertEquals(first, contents(out));
        try (Stream<Path> files = Files.list(root)) {
            assertEquals(
                    List.of("data", "out"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void export_writes_into_an_empty_folder_and_into_one_whose_parents_are_not_there() throws Exception {
        demo();
        assertEquals(0, save(Files.createDirectory(out)), complained);
        assertEquals(0, save(root.resolve("a/b/c")), complained);
        assertEquals(contents(out), contents(root.resolve("a/b/c")));
    }

    @Test
    void export_refuses_a_folder_with_other_files_and_touches_nothing_in_it() throws Exception {
        demo();
        folder("out", "thesis.txt", "years of work");
        assertEquals(2, save(out));
        assertTrue(complained.contains("thesis.txt") && complained.contains("nothing was written"), complained);
        assertEquals(List.of("thesis.txt"), List.copyOf(contents(out).keySet()));
        assertEquals(2, save(data));
        assertTrue(Files.exists(data.resolve("journal.jsonl")));
        assertEquals(2, save(out.resolve("thesis.txt")));
        assertTrue(complained.contains("is a file"), complained);
    }

    @Test
    void export_refuses_a_folder_in_the_place_of_one_of_its_files() throws Exception {
        demo();
        Files.createDirectories(out.resolve("crew.csv"));
        assertEquals(2, save(out));
        assertTrue(Files.isDirectory(out.resolve("crew.csv")));
    }

    @Test
    void an_export_that_was_cut_between_its_two_moves_is_made_good_by_the_next() throws Exception {
        demo();
        assertEquals(0, save(out));
        var first = contents(out);
        Files.move(out, root.resolve(".out-old"));
        assertEquals(0, save(out), complained);
        assertEquals(first, contents(out));
        assertFalse(Files.exists(root.resolve(".out-old")));
    }

    @Test
    void export_of_a_folder_without_a_record_is_a_usage_error_and_makes_none() {
        assertEquals(2, save(out));
        assertTrue(complained.contains("There is no record"), complained);
        assertFalse(Files.exists(data));
        assertFalse(Files.exists(out));
    }

    @Test
    void export_of_a_record_that_has_lost_its_journal_is_damage() throws Exception {
        demo();
        Files.delete(data.resolve("journal.jsonl"));
        assertEquals(5, save(out));
        assertFalse(Files.exists(out));
    }

    @Test
    void while_a_server_holds_the_data_folder_both_refuse_in_the_same_words() throws Exception {
        demo();
        try (ActStore record = ActStore.open(data, Catalogue.projection(), Clock.systemUTC())) {
            record.runningAt("http://localhost:8420");
            assertEquals(4, load(Path.of("demo-data")));
            String words = complained;
            assertTrue(words.contains("already running at http://localhost:8420"), words);
            assertEquals(4, save(out));
            assertEquals(words, complained);
            assertFalse(Files.exists(out));
        }
    }
}
