package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is wrong with a file, its header, or its lines taken together. */
class SheetErrorsTest {
    @Test
    void an_empty_file_says_what_it_should_begin_with() {
        for (String text : List.of("", "\n\n", "  \n", ",,,\n")) {
            Reading.says(Reading.with("crew.csv", text), 0, "", "empty", "name,event,tasks");
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
        Reading.says(Reading.of(Map.of()), 0, "", "nothing to take", "event.csv");
        Reading.says(Reading.of(Map.of("crew.csv", "name\n")), 0, "", "nothing to take", "event.csv");
    }

    @Test
    void an_unknown_file_is_named_with_the_nearest_known() {
        CellError error = Reading.only(Reading.with("motor.csv", "tag\n"));
        assertEquals("motor.csv", error.file());
        assertTrue(error.right().startsWith("did you mean 'motors.csv'?"), error.text());
    }

    @Test
    void an_unknown_column_is_named_with_the_nearest_known() {
        Reading.says(
                Reading.with("crew.csv", "name,taks\nIda,winds\n"), 1, "taks", "not known", "did you mean 'tasks'?");
        Reading.says(
                Reading.with("batches.csv", "batch,tickness (mm)\nA,1\n"),
                1,
                "tickness (mm)",
                "not known",
                "'thickness'");
    }

    @Test
    void a_column_that_is_there_twice_names_both_places() {
        Reading.says(
                Reading.with("crew.csv", "name,tasks,Name\nIda,,\n"), 1, "name", "as cell 1 and as cell 3", "keep one");
    }

    @Test
    void a_column_that_every_row_needs_is_missed_once_and_not_on_every_row() {
        Reading.says(
                Reading.with("models.csv", "model,hook distance\nRail 1,240 mm\nRail 2,240 mm\n"),
                1,
                "team",
                "missing",
                "add it");
    }

    @Test
    void a_unit_that_does_not_fit_in_a_header_is_said_once() {
        Reading.says(
                Reading.with("models.csv", "model,team,hook distance (in),mass (lb)\nRail 1,R,9,1\nRail 2,R,9,1\n"),
                1,
                "mass",
                "unknown unit 'lb'",
                "g, mg and oz");
        Reading.says(
                Reading.with("crew.csv", "name (first),tasks\nIda,winds\n"),
                1,
                "name",
                "has no unit",
                "write just 'name'");
        Reading.says(
                Reading.with("event.csv", "name,day,minimum (min)\nReed Day,2026-05-09,1\n"),
                1,
                "minimum",
                "min",
                "(s)");
    }

    @Test
    void two_rows_with_the_same_name_name_both_lines() {
        Reading.says(
                Reading.with("batches.csv", "batch\nA\nB\nA\n"),
                4,
                "batch",
                "on line 2 and again on line 4",
                "keep one");
        Reading.says(
                Reading.with("motors.csv", "tag,batch,team,loop,mass\nR-01,A,R,18 in,1.6 g\nR-01,A,R,19 in,1.6 g\n"),
                3,
                "tag",
                "'R-01' is on line 2 and again on line 3",
                "keep one");
        Reading.says(
                Reading.with("crew.csv", "name\nIda\nIda\n"), 3, "name", "on line 2 and again on line 3", "keep one");
    }

    @Test
    void a_line_is_counted_as_an_editor_counts_it_after_a_cell_of_several_lines() {
        Reading.says(
                Reading.with("crew.csv", "name,tasks\n\"Ida\r\nLong\",winds\n\nBo,cooks\n"),
                5,
                "tasks",
                "'cooks'",
                "winds");
    }

    @Test
    void quotes_that_do_not_close_name_the_line_where_they_open() {
        Reading.says(
                Reading.with("crew.csv", "name,tasks\nIda,winds\nBo,\"reads\nCy,\n"), 3, "", "do not close", "\"\"");
    }

    @Test
    void a_decimal_comma_that_cuts_a_cell_in_two_is_found() {
        Reading.says(
                Reading.with("motors.csv", "tag,batch,team,loop (in),mass (g)\nR-01,A,Reed,18,1,6\n"),
                2,
                "",
                "cell 6 ('6') stands under no header",
                "in quotes");
    }

    @Test
    void a_needed_column_that_is_misspelt_is_one_error_and_not_two() {
        Reading.says(
                Reading.with("crew.csv", "nmae,tasks\nIda,winds\n"), 1, "nmae", "not known", "did you mean 'name'?");
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

    @Test
    void a_tag_is_one_line_and_told_from_others_by_more_than_capital_letters() {
        String header = "tag,batch,team,loop,mass\n";
        Reading.says(
                Reading.with("motors.csv", header + "R-01,A,Reed,18.5 in,1.6 g\nr-01,A,Reed,18.5 in,1.6 g\n"),
                3,
                "tag",
                "'r-01' is told from 'R-01' by capital letters only",
                "another tag");
        for (String tag : new String[] {"R\n01", "R\t01", "R\r\n01"}) {
            Reading.says(
                    Reading.with(
                            "motors.csv", header + "R-01,A,Reed,18.5 in,1.6 g\n\"" + tag + "\",A,Reed,18.5 in,1.6 g\n"),
                    3,
                    "tag",
                    "a line break or a tab",
                    "in one line");
        }
    }
}
