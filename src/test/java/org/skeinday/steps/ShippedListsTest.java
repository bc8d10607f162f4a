package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ShippedListsTest {
    private static List<ChecklistRow> rows() throws IOException {
        try (Reader text = new InputStreamReader(
                        Checklist.class.getResourceAsStream("/checklists.csv"), StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(text)) {
            return csv.stream().map(ShippedListsTest::row).toList();
        }
    }

    private static ChecklistRow row(NamedCsvRecord r) {
        return new ChecklistRow(
                r.getField("list"),
                Integer.parseInt(r.getField("revision")),
                r.getField("title"),
                r.getField("moment"),
                r.getField("way"),
                r.getField("aloud").equals("yes"),
                r.getField("next"),
                r.getField("item"),
                r.getField("text"),
                r.getField("reason"),
                r.getField("critical").equals("yes"),
                r.getField("answer"));
    }

    private static Checklist of(Moment moment) throws IOException {
        return Checklists.of(rows()).stream()
                .filter(l -> l.moment() == moment)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void the_shipped_lists_keep_all_rules() throws IOException {
        assertEquals(List.of(), ListRules.wrong(Checklists.of(rows())));
    }

    @Test
    void each_moment_has_its_list() throws IOException {
        Set<Moment> moments = Checklists.of(rows()).stream()
                .map(Checklist::moment)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Moment.class)));
        assertEquals(EnumSet.allOf(Moment.class), moments);
    }

    @Test
    void before_winding_each_check_has_its_place_and_the_line_is_last() throws IOException {
        Checklist before = of(Moment.BEFORE_WINDING);
        assertEquals(
                List.of("adult", "motor", "direction", "ratio", "mount", "rings", "model-away", Step.EYES, Step.LINE),
                ListFixture.ids(before.steps()));
        assertTrue(before.steps().stream().allMatch(Step::critical), "none is left out");
        assertEquals(
                ItemAnswer.DIRECTION, before.step("direction").orElseThrow().answer());
        assertTrue(before.step("direction").orElseThrow().text().startsWith("Hook turns"));
        assertTrue(before.step("ratio").orElseThrow().text().startsWith("Counter at 0, needle at 0"));
        assertTrue(before.step(Step.LINE).orElseThrow().text().contains("face beside it"));
    }

    @Test
    void before_loading_is_read_aloud_and_the_next_thing_is_to_wind() throws IOException {
        assertTrue(of(Moment.BEFORE_LOADING).aloud());
        assertTrue(of(Moment.BEFORE_LOADING).next().startsWith("Start winding"));
        assertFalse(of(Moment.BEFORE_WINDING).aloud());
    }

    @Test
    void the_winding_place_asks_for_the_values_that_a_changed_place_reopens() throws IOException {
        List<ItemAnswer> answers =
                of(Moment.WINDING_PLACE).steps().stream().map(Step::answer).toList();
        assertTrue(answers.containsAll(List.of(ItemAnswer.PLACE, ItemAnswer.LANE_LENGTH, ItemAnswer.NEWTONS)));
    }

    @Test
    void a_list_is_the_same_after_rows_and_back() throws IOException {
        List<Checklist> lists = Checklists.of(rows());
        assertEquals(
                rows(), lists.stream().flatMap(l -> Checklists.rows(l).stream()).toList());
        for (Checklist list : lists) {
            assertEquals(
                    list,
                    Checklists.of(new ChecklistRevised(Checklists.rows(list), 0, null).rows())
                            .get(0));
        }
    }

    @Test
    void items_are_short_enough_to_be_spoken() throws IOException {
        for (ChecklistRow row : rows()) {
            assertTrue(row.text().length() <= 72, row.text());
            assertFalse(row.text().endsWith("."), row.text());
            assertTrue(row.reason().endsWith("."), row.reason());
        }
    }

    @Test
    void rows_of_one_list_must_agree() throws IOException {
        List<ChecklistRow> rows = new ArrayList<>(rows().subList(0, 2));
        ChecklistRow second = rows.get(1);
        rows.set(
                1,
                new ChecklistRow(
                        second.list(),
                        2,
                        second.title(),
                        second.moment(),
                        second.way(),
                        second.aloud(),
                        second.next(),
                        second.item(),
                        second.text(),
                        second.reason(),
                        second.critical(),
                        second.answer()));
        assertThrows(IllegalArgumentException.class, () -> Checklists.of(rows));
        List<ChecklistRow> two = rows();
        assertThrows(IllegalArgumentException.class, () -> new ChecklistRevised(two, 0, null));
    }
}
