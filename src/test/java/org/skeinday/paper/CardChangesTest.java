package org.skeinday.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.attempt.CardPrinted.Line;

/** In what a card on paper is out of date. */
class CardChangesTest {
    private static final List<Line> PRINTED = List.of(
            new Line("Motor", "A3, use 1"),
            new Line("Spare", "B2, use 1"),
            new Line("Winds", "p1"),
            new Line("Start", ""));

    @Test
    void what_is_as_it_was_is_no_change() {
        assertEquals(List.of(), CardChanges.of(PRINTED, PRINTED));
    }

    @Test
    void motors_are_said_with_what_they_were_and_are_and_people_by_their_task_alone() {
        List<Line> now = List.of(
                new Line("Motor", "B2, use 1"), new Line("Spare", ""), new Line("Winds", "p2"), new Line("Start", ""));
        assertEquals(
                List.of("motor (A3, use 1 → B2, use 1)", "spare (B2, use 1 → none)", "winds"),
                CardChanges.of(PRINTED, now));
    }

    @Test
    void a_line_that_came_and_one_that_went_are_changes() {
        List<Line> now = List.of(
                new Line("Motor", "A3, use 1"),
                new Line("Spare", "B2, use 1"),
                new Line("Winds", "p1"),
                new Line("Wound at", "Spare post"));
        assertEquals(List.of("wound at"), CardChanges.of(PRINTED, now), "a line that was empty is none");
        assertEquals(List.of("wound at"), CardChanges.of(now, PRINTED));
    }
}
