package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CellErrorsTest {
    @Test
    void the_day_that_these_tests_change_is_right() {
        Reading.right(Reading.of(Reading.RIGHT));
    }

    @Test
    void an_empty_cell_that_must_be_filled_names_its_line() {
        Reading.says(Reading.with("crew.csv", "name,tasks\nIda,winds\n,reads\n"), 3, "name", "empty", "fill it in");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "18.5|has no unit|18.5 in",
                "18.5 ell|unknown unit 'ell'|known are",
                "long|is not a length|write a number and a unit",
                "-3 in|below zero|zero or more",
                "0 mm|out of bounds|write 10 to 5000 mm",
                "9.9 mm|out of bounds|write 10 to 5000 mm",
                "9000 m|out of bounds|write 10 to 5000 mm",
                "1/0 in|divides by zero|18 1/2 in",
            })
    void a_quantity_that_cannot_be_read_says_why(String typed, String wrong, String right) {
        Reading.says(
                Reading.with("motors.csv", "tag,batch,team,loop,mass\nR-01,A,Reed," + typed + ",1.6 g\n"),
                2,
                "loop",
                wrong,
                right);
    }

    @ParameterizedTest
    @CsvSource({
        "rules.csv, held watched, 0, 10:00, x, 10:00.001",
        "rules.csv, repeats, 0, 10, -1, 11",
        "rules.csv, repeats in all, 0, 500, -1, 501",
        "rules.csv, time to choose, 0.001, 60:00, 0, 60:00.001",
        "rules.csv, drop best, 0, 2, -1, 6",
        "rules.csv, drop worst, 0, 2, -1, 6",
        "rules.csv, last call, 0, 60:00, x, 60:00.001",
        "event.csv, attempts, 1, 20, 0, 21",
        "event.csv, window minutes, 0, 600, -1, 601",
        "event.csv, timekeepers, 1, 3, 0, 4",
        "event.csv, winder ratio, 1, 50, 0.9, 50.1",
        "event.csv, to, 0.001, 1:00, 0, 1:00.001",
        "event.csv, minimum, 0, 60:00, x, 60:00.001",
        "batches.csv, k, 10, 100, 9.9, 100.1",
        "motors.csv, uses, 0, 90, -1, 91",
        "motors.csv, loop, 10 mm, 5 m, 9.9 mm, 5.001 m",
        "motors.csv, mass, 0.01 g, 500 g, 0.009 g, 500.1 g",
        "batches.csv, width, 0.1 mm, 100 mm, 0.09 mm, 100.1 mm",
        "batches.csv, thickness, 0.1 mm, 20 mm, 0.09 mm, 20.1 mm",
        "motors.csv, breaking turns, 50, 100000, 49, 100001",
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
            Reading.says(Reading.with(file, row(file, column, outside)), 2, column, "'" + outside, "write ");
        }
    }

    /** A row of this file that is right but for one column. */
    private static String row(String file, String column, String value) {
        Map<String, Map<String, String>> rows = Map.of(
                "event.csv", Map.of("name", "Reed Day", "day", "2026-05-09"),
                "rules.csv", Map.of("event", ""),
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
        Reading.says(Reading.of(right), 2, column, (longest + 1) + " characters", "at most " + longest);
    }

    @Test
    void a_motors_tag_may_have_forty_characters() {
        String row = "tag,batch,team,loop,mass\n%s,A,Reed,18 in,1.6 g\n";
        Reading.right(Reading.with("motors.csv", row.formatted("x".repeat(40))));
        Reading.says(
                Reading.with("motors.csv", row.formatted("x".repeat(41))), 2, "tag", "41 characters", "at most 40");
    }

    @Test
    void best_of_more_attempts_than_there_are_cannot_count() {
        Reading.right(Reading.with("event.csv", "name,day,attempts,best of\nReed Day,2026-05-09,2,2\n"));
        Reading.says(
                Reading.with("event.csv", "name,day,attempts,best of\nReed Day,2026-05-09,2,3\n"),
                2,
                "best of",
                "best 3 of 2",
                "at most 2");
    }

    @Test
    void a_number_with_letters_or_decimals_where_none_belong_is_refused() {
        Reading.says(
                Reading.with("batches.csv", "batch,k\nA,4e1\n"), 2, "k", "'4e1' is not a number", "from 10 to 100");
        Reading.says(
                Reading.with("motors.csv", row("motors.csv", "uses", "1.5")),
                2,
                "uses",
                "no whole number",
                "from 0 to 90");
    }

    @Test
    void a_word_that_is_not_known_is_answered_with_those_that_are() {
        Reading.says(
                Reading.with("event.csv", "name,day,kind\nReed Day,2026-05-09,contest\n"),
                2,
                "kind",
                "'contest'",
                "visiting, hosting, practice");
        Reading.says(
                Reading.with("crew.csv", "name,tasks\nIda,winds | cooks\n"), 2, "tasks", "'cooks'", "winds | reads");
    }

    @Test
    void a_name_that_no_other_file_has_is_answered_with_the_nearest() {
        Reading.says(
                Reading.with("entries.csv", "entry,team,models\nTeal,Reed,Rial 1\n"),
                2,
                "models",
                "there is no model 'Rial 1'",
                "did you mean 'Rail 1'?");
        Reading.says(
                Reading.with("windows.csv", "entry,opens,closes\nTeel,2026-05-09 10:00,2026-05-09 10:12\n"),
                2,
                "entry",
                "no entry 'Teel'",
                "entries.csv");
    }

    @Test
    void a_character_that_could_not_be_read_is_no_part_of_a_name() {
        Reading.says(Reading.with("crew.csv", "name\nI\uFFFDa\n"), 2, "name", "could not be read", "UTF-8");
    }

    @Test
    void a_window_closes_after_it_opens() {
        Reading.says(
                Reading.with("windows.csv", "opens,closes\n2026-05-09 10:00,2026-05-09 10:00\n"),
                2,
                "closes",
                "not after",
                "after it opens");
        Reading.right(Reading.with("windows.csv", "opens,closes\n2026-05-09 10:00,2026-05-09 10:01\n"));
    }

    @Test
    void a_model_named_with_the_bar_that_parts_models_is_refused() {
        Reading.says(
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
        Reading.says(Reading.with("flights.csv", head + "\n"), 2, "reason", "needs a reason", "touched the wall");
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
}
