package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.skeinday.TestIds;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ChecklistRevised;
import org.skeinday.steps.Checklists;
import org.skeinday.steps.KnownLists;
import org.skeinday.steps.Step;
import org.skeinday.steps.store.ListStore;

/** Lists as rows of a file, into a record that has the program's own. */
class ChecklistRowsTest {
    private static final String HEAD = "list,revision,title,moment,way,aloud,next,item,text,reason,critical,answer\n";
    private static final Day THERE = there(new KnownLists(ListStore.shipped(), ListStore.everShipped(), List.of()));

    private static Day there(KnownLists lists) {
        return new Day(
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                List.of(),
                List.of(),
                Map.of(),
                more(lists));
    }

    private static Day.More more(KnownLists lists) {
        return new Day.More(
                List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
                lists, List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
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
    void a_list_that_an_earlier_program_brought_brings_nothing_and_a_coachs_of_then_comes_in() throws Exception {
        String before = Files.readString(Path.of("src/main/resources/checklists-before.csv"));
        String more = row(2, "Ours", "a", "yes");
        DayFiles.Read read = read(before.substring(before.indexOf('\n') + 1) + more);
        Reading.right(read);
        assertEquals(1, read.facts().size(), "the other list alone");
        assertTrue(before.contains(",Before winding,"));
        String ours = before.replace("before-winding,1,Before winding,", "before-winding,2,As we wind,");
        DayFiles.Read own = read(ours.substring(ours.indexOf('\n') + 1));
        Reading.right(own);
        Checklist list = Checklists.of(((ChecklistRevised) own.facts().get(0).body()).rows())
                .get(0);
        assertEquals("As we wind", list.title());
        assertEquals(4 + 1, list.steps().size(), "with the line, which its writer did not know");
        assertEquals(Step.LINE, list.critical().get(3).id());
    }

    /** It was walked through, so its number is taken: a coach's of before is the next one. */
    @Test
    void a_coachs_list_of_before_does_not_take_the_number_of_one_that_the_record_holds() throws Exception {
        String before = Files.readString(Path.of("src/main/resources/checklists-before.csv"));
        String ours = before.replace("before-winding,1,Before winding,", "before-winding,2,As we wind,");
        Day walked = there(new KnownLists(ListStore.shipped(), ListStore.everShipped(), ListStore.shipped()));
        DayFiles.Read read = DayFiles.read(
                Map.of("checklists.csv", HEAD + ours.substring(ours.indexOf('\n') + 1)),
                walked,
                TestIds.from("act-"),
                Reading.ZONE,
                Duration.ZERO);
        Reading.says(read, 2, "revision", "revision 2 of this list is in force", "write 3");
    }

    @Test
    void a_list_whose_line_is_not_the_last_critical_item_is_refused() {
        String row = "before-winding,3,Ours,before-winding,do-then-confirm,no,Next: load.,%s,Do it,Because,%s,ok\n";
        DayFiles.Read read = read(row.formatted("line", "yes") + row.formatted("eye-protection", "yes"));
        Reading.says(read, 2, "item", "must ask, as the last critical item", "let 'line' be the last");
    }

    @Test
    void a_coachs_list_is_not_overwritten_by_another_under_its_number() {
        Checklist ours = ListStore.shipped().stream()
                .filter(list -> list.id().equals("arrival"))
                .map(list -> new Checklist(
                        list.id(), 2, "Ours", list.moment(), list.way(), list.aloud(), list.next(), list.steps()))
                .findFirst()
                .orElseThrow();
        DayFiles.Read read = DayFiles.read(
                Map.of("checklists.csv", HEAD + row(2, "Theirs", "a", "yes")),
                there(new KnownLists(List.of(ours), ListStore.everShipped(), List.of(ours))),
                TestIds.from("act-"),
                Reading.ZONE,
                Duration.ZERO);
        Reading.says(read, 2, "revision", "revision 2 of this list is in force", "write 3");
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
