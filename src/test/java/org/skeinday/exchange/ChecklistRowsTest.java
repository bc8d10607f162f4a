package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.skeinday.TestIds;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ChecklistRevised;
import org.skeinday.steps.Checklists;
import org.skeinday.steps.store.ListStore;

/** Lists as rows of a file, into a record that has the program's own. */
class ChecklistRowsTest {
    private static final String HEAD = "list,revision,title,moment,way,aloud,next,item,text,reason,critical,answer\n";
    private static final Day THERE = new Day(
            List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
            List.of(), Map.of(), List.of(), List.of(), Map.of(), more());

    private static Day.More more() {
        return new Day.More(
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                ListStore.shipped(),
                List.of());
    }

    private static DayFiles.Read read(String rows) {
        return DayFiles.read(
                Map.of("checklists.csv", HEAD + rows), THERE, TestIds.from("act-"), Reading.ZONE, Duration.ZERO);
    }

    private static String row(int revision, String title, String item, String critical) {
        return "arrival," + revision + "," + title + ",arrival,do-then-confirm,no,Next: the lane.," + item + ",Do "
                + item
                + ",Because,"
                + critical + ",ok\n";
    }

    @Test
    void a_list_comes_in_as_a_whole_in_a_higher_revision() {
        DayFiles.Read read = read(row(2, "Ours", "a", "yes") + row(2, "Ours", "b", "no"));
        Reading.right(read);
        Checklist list = Checklists.of(((ChecklistRevised) read.facts().get(0).body()).rows())
                .get(0);
        assertEquals(2, list.revision());
        assertEquals(List.of("a", "b"), list.steps().stream().map(s -> s.id()).toList());
    }

    @Test
    void another_text_under_the_revision_in_force_is_refused() {
        Reading.says(read(row(1, "Ours", "a", "yes")), 2, "revision", "revision 1 of this list is in force", "write 2");
    }

    @Test
    void rows_that_do_not_agree_about_their_list_are_refused() {
        DayFiles.Read read = read(row(2, "Ours", "a", "yes") + row(2, "Theirs", "b", "no"));
        assertEquals(1, read.errors().size(), read.errors().toString());
    }

    @Test
    void a_critical_item_after_another_is_refused() {
        DayFiles.Read read = read(row(2, "Ours", "a", "no") + row(2, "Ours", "b", "yes"));
        assertEquals(1, read.errors().size(), read.errors().toString());
        assertEquals("checklists.csv", read.errors().get(0).file());
    }

    @Test
    void a_list_that_nobody_knows_and_one_at_another_pause_are_refused() {
        Reading.says(
                read(row(2, "Ours", "a", "yes").replace("arrival,2", "lunch,2")),
                2,
                "list",
                "no list 'lunch'",
                "arrival");
        Reading.says(
                read(row(2, "Ours", "a", "yes").replace(",arrival,do", ",packing,do")),
                2,
                "moment",
                "stays at its pause",
                "arrival");
    }
}
