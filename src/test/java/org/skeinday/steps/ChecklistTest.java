package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.steps.ListFixture.list;
import static org.skeinday.steps.ListFixture.ok;
import static org.skeinday.steps.ListFixture.value;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.skeinday.steps.store.ListStore;
import org.skeinday.units.UnitSystem;

class ChecklistTest {
    private static Step[] items(int count) {
        return IntStream.range(0, count).mapToObj(i -> ok("item-" + i, false)).toArray(Step[]::new);
    }

    private static void refused(String part, Executable making) {
        String message = String.valueOf(
                assertThrows(IllegalArgumentException.class, making).getMessage());
        assertTrue(message.contains(part), message);
    }

    @Test
    void a_coachs_own_list_has_at_most_twelve_items() {
        assertEquals(12, list(Moment.ARRIVAL, false, items(12)).steps().size());
        refused("1 to 12, but was 13", () -> list(Moment.ARRIVAL, false, items(13)));
        refused("1 to 12, but was 0", () -> list(Moment.ARRIVAL, false));
    }

    @Test
    void more_than_four_items_are_warned_of_and_not_refused() {
        assertEquals(List.of(), ListRules.advice(list(Moment.ARRIVAL, false, items(4))));
        assertEquals(
                List.of("'A list' has 5 items: more than 4 at one pause are not read to their end."),
                ListRules.advice(list(Moment.ARRIVAL, false, items(5))));
    }

    @Test
    void before_winding_nine_are_read_and_more_are_warned_of() {
        Step[] nine = items(9);
        nine[0] = ok(Step.EYES, true);
        nine[1] = ok(Step.LINE, true);
        assertEquals(List.of(), ListRules.advice(list(Moment.BEFORE_WINDING, false, nine)));
        Step[] ten = items(10);
        ten[0] = ok(Step.EYES, true);
        assertEquals(
                List.of("'A list' has 10 items: more than 9 at one pause are not read to their end."),
                ListRules.advice(list(Moment.BEFORE_WINDING, false, ten)));
    }

    @Test
    void a_list_worded_anew_keeps_the_line_as_its_last_critical_item() {
        Checklist with = list(Moment.BEFORE_WINDING, false, ok(Step.EYES, true), ok(Step.LINE, true), ok("c", false));
        Checklist without = list(Moment.BEFORE_WINDING, false, ok(Step.EYES, true), ok("c", false));
        Checklist early = list(Moment.BEFORE_WINDING, false, ok(Step.LINE, true), ok(Step.EYES, true));
        Checklist skipped = list(Moment.BEFORE_WINDING, false, ok(Step.EYES, true), ok(Step.LINE, false));
        assertTrue(ListRules.refusesAnew(with).isEmpty());
        for (Checklist bad : List.of(without, early, skipped)) {
            assertTrue(ListRules.refusesAnew(bad).orElseThrow().contains("as the last critical item"));
        }
        assertTrue(ListRules.refusesAnew(list(Moment.ARRIVAL, false, ok("a", true)))
                .isEmpty());
    }

    /** Nobody answers for the line, whoever wrote the list and when. */
    @Test
    void a_list_that_was_written_before_the_line_had_an_item_asks_for_it_last_all_the_same() {
        Checklist old = list(Moment.BEFORE_WINDING, false, ok(Step.EYES, true), ok("c", false));
        Checklist read = Checklists.of(Checklists.rows(old)).get(0);
        assertEquals(
                List.of(Step.EYES, Step.LINE, "c"),
                read.steps().stream().map(Step::id).toList());
        assertEquals(read, Checklists.of(Checklists.rows(read)).get(0));
        assertEquals(
                ListStore.shipped().stream()
                        .flatMap(l -> l.step(Step.LINE).stream())
                        .findFirst()
                        .orElseThrow(),
                read.step(Step.LINE).orElseThrow());
    }

    @Test
    void critical_items_come_first() {
        list(Moment.ARRIVAL, false, ok("a", true), ok("b", false));
        refused("must come first", () -> list(Moment.ARRIVAL, false, ok("a", false), ok("b", true)));
    }

    @Test
    void an_item_stands_once() {
        refused("'a' stands twice", () -> list(Moment.ARRIVAL, false, ok("a", true), ok("a", true)));
    }

    @Test
    void a_list_read_aloud_asks_for_no_value() {
        list(Moment.BEFORE_LOADING, true, ok("a", true));
        refused("one asks for a value", () -> list(Moment.BEFORE_LOADING, true, value("a", true, ItemAnswer.COUNT)));
        list(Moment.AFTER_LANDING, false, value("a", true, ItemAnswer.COUNT));
    }

    @Test
    void what_the_gate_waits_for_cannot_be_edited_away() {
        list(Moment.WINDING_PLACE, false, ok("mount", true));
        refused("at least one critical item", () -> list(Moment.WINDING_PLACE, false, ok("mount", false)));
        list(Moment.BEFORE_WINDING, false, ok(Step.EYES, true));
        refused("eye protection", () -> list(Moment.BEFORE_WINDING, false, ok(Step.EYES, false)));
        refused("eye protection", () -> list(Moment.BEFORE_WINDING, false, ok("direction", true)));
    }

    @Test
    void a_list_says_what_comes_next_and_an_item_why() {
        refused(
                "what comes next",
                () -> new Checklist("l", 1, "t", Moment.ARRIVAL, Way.READ_THEN_DO, false, " ", List.of(ok("a", true))));
        refused("The reason of 'Do it'", () -> new Step("a", "Do it", " ", true, ItemAnswer.OK));
    }

    @Test
    void an_attempt_has_at_most_three_lists_to_tap_through() {
        List<Checklist> three = List.of(
                list(Moment.BEFORE_WINDING, false, ok(Step.EYES, true), ok(Step.LINE, true)),
                list(Moment.BEFORE_LOADING, true, ok("a", true)),
                list(Moment.AFTER_LANDING, false, ok("a", true)));
        assertEquals(List.of(), ListRules.wrong(three));
        var four = new java.util.ArrayList<>(three);
        four.add(list(Moment.AFTER_LANDING, false, ok("b", true)));
        assertEquals(
                List.of(
                        "There is more than one list at the pause after-landing.",
                        "An attempt has 4 lists: more than 3 are tapped without reading."),
                ListRules.wrong(four));
    }

    @Test
    void words_of_files_are_read_back() {
        for (Moment moment : Moment.values()) {
            assertEquals(moment, Moment.ofWord(moment.word()));
        }
        for (Way way : Way.values()) {
            assertEquals(way, Way.ofWord(way.word()));
        }
        for (ItemAnswer answer : ItemAnswer.values()) {
            assertEquals(answer, ItemAnswer.ofWord(answer.word()));
        }
        refused("must be one of packing, arrival", () -> Moment.ofWord("lunch"));
    }

    @Test
    void only_the_time_before_release_is_quiet() {
        for (Moment moment : Moment.values()) {
            assertEquals(moment == Moment.RELEASE, moment.isQuiet());
        }
    }

    @Test
    void an_answer_takes_its_own_kind_and_says_what_would_be_right() {
        takes(ItemAnswer.DIRECTION, "cw", "left");
        takes(ItemAnswer.LAUNCH_TORQUE, "0.55 in-ozf", "strong");
        takes(ItemAnswer.LANE_LENGTH, "4.6 m", "4.6 kg");
        takes(ItemAnswer.NEWTONS, "12.5", "0");
        takes(ItemAnswer.RATIO, "10", "51");
        takes(ItemAnswer.MASS, "4.02 g", "4 m");
        takes(ItemAnswer.COUNT, "0", "-1");
        takes(ItemAnswer.PLACE, "clear", " ");
        assertTrue(ItemAnswer.OK.refuses("").isEmpty());
        assertTrue(ItemAnswer.COUNT.refuses("x").orElseThrow().contains("; write a whole number"));
    }

    @Test
    void an_answer_is_kept_without_or_with_the_unit_that_its_item_names() {
        keeps(ItemAnswer.NEWTONS, "8 N", "8");
        keeps(ItemAnswer.NEWTONS, "8,4newtons", "8.4");
        keeps(ItemAnswer.RATIO, "10:1", "10");
        keeps(ItemAnswer.RATIO, " 9,5 to 1 ", "9.5");
        keeps(ItemAnswer.LANE_LENGTH, "4,6 m", "4,6 m");
        keeps(ItemAnswer.LANE_LENGTH, "4.6", "4.6 m");
        assertEquals("15 ft", ItemAnswer.LANE_LENGTH.plain("15", UnitSystem.INCH), "as it stands beside the item");
        keeps(ItemAnswer.LANE_LENGTH, "15 ft", "15 ft");
        keeps(ItemAnswer.MASS, "4.02", "4.02 g");
        assertTrue(ItemAnswer.NEWTONS
                .refuses(ItemAnswer.NEWTONS.plain("8 kg", UnitSystem.METRIC))
                .isPresent());
        keeps(ItemAnswer.LAUNCH_TORQUE, "3.9", "3.9 mN-m");
        assertEquals("0.55 in-ozf", ItemAnswer.LAUNCH_TORQUE.plain("0.55", UnitSystem.METRIC_INCH_OUNCE));
    }

    private static void keeps(ItemAnswer answer, String typed, String kept) {
        assertEquals(kept, answer.plain(typed, UnitSystem.METRIC));
        assertTrue(answer.refuses(kept).isEmpty(), kept);
    }

    private static void takes(ItemAnswer answer, String good, String bad) {
        assertTrue(answer.refuses(good).isEmpty(), answer + " " + answer.refuses(good));
        assertTrue(answer.refuses(bad).isPresent(), answer + " took " + bad);
    }
}
