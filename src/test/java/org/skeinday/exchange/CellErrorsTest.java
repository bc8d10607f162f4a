package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CellErrorsTest {
    private static void says(DayFiles.Read read, int line, String column, String wrong, String right) {
        CellError error = Reading.only(read);
        assertEquals(line, error.line(), error.text());
        assertEquals(column, error.column(), error.text());
        assertTrue(error.wrong().contains(wrong), error.text());
        assertTrue(error.right().contains(right), error.text());
    }

    @Test
    void the_day_that_these_tests_change_is_right() {
        Reading.right(Reading.of(Reading.RIGHT));
    }

    @Test
    void an_empty_file_says_what_it_should_begin_with() {
        for (String text : List.of("", "\n\n", "  \n", ",,,\n")) {
            says(Reading.with("crew.csv", text), 0, "", "empty", "name,event,tasks");
        }
    }

    @Test
    void a_file_with_a_header_only_has_no_rows_and_is_right() {
        DayFiles.Read read = Reading.with("crew.csv", "name,event,tasks\n");
        Reading.right(read);
        assertEquals(0, read.rows().get("crew.csv"));
    }

    @Test
    void a_folder_that_brings_nothing_is_an_error() {
        says(Reading.of(Map.of()), 0, "", "nothing to take", "event.csv");
        says(Reading.of(Map.of("crew.csv", "name\n")), 0, "", "nothing to take", "event.csv");
    }

    @Test
    void an_unknown_file_is_named_with_the_nearest_known() {
        CellError error = Reading.only(Reading.with("motor.csv", "tag\n"));
        assertEquals("motor.csv", error.file());
        assertTrue(error.right().startsWith("did you mean 'motors.csv'?"), error.text());
    }

    @Test
    void an_unknown_column_is_named_with_the_nearest_known() {
        says(Reading.with("crew.csv", "name,taks\nIda,winds\n"), 1, "taks", "not known", "did you mean 'tasks'?");
        says(Reading.with("batches.csv", "batch,tickness (mm)\nA,1\n"), 1, "tickness (mm)", "not known", "'thickness'");
    }

    @Test
    void a_column_that_is_there_twice_names_both_places() {
        says(Reading.with("crew.csv", "name,tasks,Name\nIda,,\n"), 1, "name", "as cell 1 and as cell 3", "keep one");
    }

    @Test
    void a_column_that_every_row_needs_is_missed_once_and_not_on_every_row() {
        says(
                Reading.with("models.csv", "model,hook distance\nRail 1,240 mm\nRail 2,240 mm\n"),
                1,
                "team",
                "missing",
                "add it");
    }

    @Test
    void an_empty_cell_that_must_be_filled_names_its_line() {
        says(Reading.with("crew.csv", "name,tasks\nIda,winds\n,reads\n"), 3, "name", "empty", "fill it in");
    }

    @Test
    void a_unit_that_does_not_fit_in_a_header_is_said_once() {
        says(
                Reading.with("models.csv", "model,team,hook distance (in),mass (lb)\nRail 1,R,9,1\nRail 2,R,9,1\n"),
                1,
                "mass",
                "unknown unit 'lb'",
                "g, mg and oz");
        says(
                Reading.with("crew.csv", "name (first),tasks\nIda,winds\n"),
                1,
                "name",
                "has no unit",
                "write just 'name'");
        says(Reading.with("event.csv", "name,day,minimum (min)\nReed Day,2026-05-09,1\n"), 1, "minimum", "min", "(s)");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "18.5|has no unit|18.5 in",
                "18.5 ell|unknown unit 'ell'|known are",
                "long|is not a length|write a number and a unit",
                "-3 in|below zero|zero or more",
                "0 mm|out of bounds|write at least 0.001 mm",
                "0.0009 mm|out of bounds|write at least 0.001 mm",
                "1/0 in|divides by zero|18 1/2 in",
            })
    void a_quantity_that_cannot_be_read_says_why(String typed, String wrong, String right) {
        says(
                Reading.with("motors.csv", "tag,batch,team,loop,mass\nR-01,A,Reed," + typed + ",1.6 g\n"),
                2,
                "loop",
                wrong,
                right);
    }

    @ParameterizedTest
    @CsvSource({
        "event.csv, attempts, 1, 20, 0, 21",
        "event.csv, window minutes, 0, 600, -1, 601",
        "event.csv, timekeepers, 1, 3, 0, 4",
        "event.csv, winder ratio, 1, 50, 0.9, 50.1",
        "event.csv, to, 0.001, 1:00, 0, 1:00.001",
        "event.csv, minimum, 0, 60:00, x, 60:00.001",
        "batches.csv, k, 10, 100, 9.9, 100.1",
        "motors.csv, uses, 0, 1000, -1, 1001",
        "motors.csv, breaking turns, 1, 100000, 0, 100001",
        "models.csv, hook distance, 20 mm, 2000 mm, 19.9 mm, 2000.1 mm",
        "flights.csv, ratio, 0.1, 100, 0.09, 100.1",
        "flights.csv, time, 0, 120:00, x, 120:00.001",
        "flights.csv, crank turns, 1, 100000, 0, 100001",
        "flights.csv, back off, 0, 10000, -0.1, 10000.1",
        "flights.csv, remaining, 0, 100000, -0.1, 100000.1",
    })
    void a_number_is_taken_on_its_bounds_and_refused_beyond_them(
            String file, String column, String least, String most, String below, String above) {
        for (String inside : List.of(least, most)) {
            Reading.right(Reading.with(file, row(file, column, inside)));
        }
        for (String outside : List.of(below, above)) {
            says(Reading.with(file, row(file, column, outside)), 2, column, "'" + outside, "write ");
        }
    }

    /** A row of this file that is right but for one column. */
    private static String row(String file, String column, String value) {
        Map<String, Map<String, String>> rows = Map.of(
                "event.csv", Map.of("name", "Reed Day", "day", "2026-05-09"),
                "batches.csv", Map.of("batch", "A"),
                "motors.csv", Map.of("tag", "R-01", "batch", "A", "team", "R", "loop", "18 in", "mass", "1.6 g"),
                "models.csv", Map.of("model", "Rail 1", "team", "R", "hook distance", "240 mm"),
                "flights.csv", Map.of("motor", "R-01", "flown", "2026-05-09 10:00", "time", "1:00"));
        Map<String, String> cells = new HashMap<>(rows.get(file));
        cells.put(column, value);
        return String.join(",", cells.keySet()) + "\n" + String.join(",", cells.values()) + "\n";
    }

    @ParameterizedTest
    @CsvSource({"crew.csv, name, 120", "batches.csv, batch, 120", "flights.csv, note, 400", "entries.csv, division, 60"
    })
    void a_text_may_be_as_long_as_the_record_keeps_and_no_longer(String file, String column, int longest) {
        Map<String, String> heads = Map.of(
                "crew.csv", "tasks,name\n,",
                "batches.csv", "k,batch\n,",
                "flights.csv", "motor,flown,time,note\nR-01,2026-05-09 10:00,1:00,",
                "entries.csv", "entry,team,division\nTeal,Reed,");
        Map<String, String> texts = new HashMap<>(Reading.RIGHT);
        texts.remove("motors.csv");
        texts.put("motors.csv", "tag,batch,team,loop,mass\n");
        String head = heads.get(file);
        Map<String, String> right = file.equals("batches.csv") ? texts : new HashMap<>(Reading.RIGHT);
        right.put(file, head + "x".repeat(longest) + "\n");
        Reading.right(Reading.of(right));
        right.put(file, head + "x".repeat(longest + 1) + "\n");
        says(Reading.of(right), 2, column, (longest + 1) + " characters", "at most " + longest);
    }

    @Test
    void a_motors_tag_may_have_forty_characters() {
        String row = "tag,batch,team,loop,mass\n%s,A,Reed,18 in,1.6 g\n";
        Reading.right(Reading.with("motors.csv", row.formatted("x".repeat(40))));
        says(Reading.with("motors.csv", row.formatted("x".repeat(41))), 2, "tag", "41 characters", "at most 40");
    }

    @Test
    void best_of_more_attempts_than_there_are_cannot_count() {
        Reading.right(Reading.with("event.csv", "name,day,attempts,best of\nReed Day,2026-05-09,2,2\n"));
        says(
                Reading.with("event.csv", "name,day,attempts,best of\nReed Day,2026-05-09,2,3\n"),
                2,
                "best of",
                "best 3 of 2",
                "at most 2");
    }

    @Test
    void a_number_with_letters_or_decimals_where_none_belong_is_refused() {
        says(Reading.with("batches.csv", "batch,k\nA,4e1\n"), 2, "k", "'4e1' is not a number", "from 10 to 100");
        says(
                Reading.with("motors.csv", row("motors.csv", "uses", "1.5")),
                2,
                "uses",
                "no whole number",
                "from 0 to 1000");
    }

    @Test
    void a_word_that_is_not_known_is_answered_with_those_that_are() {
        says(
                Reading.with("event.csv", "name,day,kind\nReed Day,2026-05-09,contest\n"),
                2,
                "kind",
                "'contest'",
                "visiting, hosting, practice");
        says(Reading.with("crew.csv", "name,tasks\nIda,winds | cooks\n"), 2, "tasks", "'cooks'", "winds | reads");
    }

    @Test
    void two_rows_with_the_same_name_name_both_lines() {
        says(Reading.with("batches.csv", "batch\nA\nB\nA\n"), 4, "batch", "on line 2 and again on line 4", "keep one");
        says(
                Reading.with("motors.csv", "tag,batch,team,loop,mass\nR-01,A,R,18 in,1.6 g\nR-01,A,R,19 in,1.6 g\n"),
                3,
                "tag",
                "'R-01' is on line 2 and again on line 3",
                "keep one");
        says(Reading.with("crew.csv", "name\nIda\nIda\n"), 3, "name", "on line 2 and again on line 3", "keep one");
    }

    @Test
    void a_line_is_counted_as_an_editor_counts_it_after_a_cell_of_several_lines() {
        says(
                Reading.with("crew.csv", "name,tasks\n\"Ida\r\nLong\",winds\n\nBo,cooks\n"),
                5,
                "tasks",
                "'cooks'",
                "winds");
    }

    @Test
    void a_name_that_no_other_file_has_is_answered_with_the_nearest() {
        says(
                Reading.with("entries.csv", "entry,team,models\nTeal,Reed,Rial 1\n"),
                2,
                "models",
                "there is no model 'Rial 1'",
                "did you mean 'Rail 1'?");
        says(
                Reading.with("windows.csv", "entry,opens,closes\nTeel,2026-05-09 10:00,2026-05-09 10:12\n"),
                2,
                "entry",
                "no entry 'Teel'",
                "entries.csv");
    }

    @Test
    void quotes_that_do_not_close_name_the_line_where_they_open() {
        says(Reading.with("crew.csv", "name,tasks\nIda,winds\nBo,\"reads\nCy,\n"), 3, "", "do not close", "\"\"");
    }

    @Test
    void a_decimal_comma_that_cuts_a_cell_in_two_is_found() {
        says(
                Reading.with("motors.csv", "tag,batch,team,loop (in),mass (g)\nR-01,A,Reed,18,1,6\n"),
                2,
                "",
                "cell 6 ('6') stands under no header",
                "in quotes");
    }

    @Test
    void a_character_that_could_not_be_read_is_no_part_of_a_name() {
        says(Reading.with("crew.csv", "name\nI\uFFFDa\n"), 2, "name", "could not be read", "UTF-8");
    }

    @Test
    void a_window_closes_after_it_opens() {
        says(
                Reading.with("windows.csv", "opens,closes\n2026-05-09 10:00,2026-05-09 10:00\n"),
                2,
                "closes",
                "not after",
                "after it opens");
        Reading.right(Reading.with("windows.csv", "opens,closes\n2026-05-09 10:00,2026-05-09 10:01\n"));
    }

    @Test
    void a_model_named_with_the_bar_that_parts_models_is_refused() {
        says(
                Reading.with("models.csv", "model,team,hook distance\nRail 1,R,240 mm\nRa|il,R,240 mm\n"),
                3,
                "model",
                "has a |",
                "leave it out");
    }

    @Test
    void a_flight_that_is_not_valid_needs_a_reason() {
        String head = "motor,flown,time,valid,reason\nR-01,2026-05-09 10:00,1:00,no,";
        Reading.right(Reading.with("flights.csv", head + "touched the wall\n"));
        says(Reading.with("flights.csv", head + "\n"), 2, "reason", "needs a reason", "touched the wall");
    }

    @Test
    void where_there_are_two_events_each_row_says_which() {
        List<String> errors =
                Reading.with("event.csv", "name,day\nReed Day,2026-05-09\nSedge Day,2026-05-10\n").errors().stream()
                        .map(CellError::text)
                        .toList();
        String says = " line 2, column \"event\": this is empty and there is not just one event; write one of Reed Day,"
                + " Sedge Day";
        assertEquals(List.of("entries.csv" + says, "windows.csv" + says), errors);
    }

    @Test
    void a_needed_column_that_is_misspelt_is_one_error_and_not_two() {
        says(Reading.with("crew.csv", "nmae,tasks\nIda,winds\n"), 1, "nmae", "not known", "did you mean 'name'?");
    }

    @Test
    void two_rows_without_a_name_are_two_empty_cells_and_no_double() {
        List<String> wrong = Reading.with("crew.csv", "name,tasks\n,winds\n,reads\n").errors().stream()
                .map(CellError::wrong)
                .toList();
        assertEquals(List.of("this is empty", "this is empty"), wrong);
    }

    @Test
    void every_error_of_every_file_is_told_at_once_in_the_order_of_files_and_lines() {
        Map<String, String> texts = new HashMap<>(Reading.RIGHT);
        texts.put("crew.csv", "name,tasks\nIda,cooks\nBo,sings\n");
        texts.put("batches.csv", "batch,k\nA,1\n");
        texts.put("motors.csv", "tag,batch,team,loop,mass\nR-01,Z,,18,1.6 g\n");
        List<String> places = Reading.of(texts).errors().stream()
                .map(e -> e.file() + ":" + e.line() + ":" + e.column())
                .toList();
        assertEquals(
                List.of(
                        "batches.csv:2:k",
                        "motors.csv:2:team",
                        "motors.csv:2:batch",
                        "motors.csv:2:loop",
                        "crew.csv:2:tasks",
                        "crew.csv:3:tasks"),
                places);
    }

    @Test
    void an_error_reads_as_a_sentence_with_its_place() {
        assertEquals(
                "batches.csv line 2, column \"k\": '1' is out of bounds; write a number from 10 to 100",
                Reading.only(Reading.with("batches.csv", "batch,k\nA,1\n")).text());
    }
}
