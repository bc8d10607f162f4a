package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.steps.ListFixture.list;
import static org.skeinday.steps.ListFixture.ok;
import static org.skeinday.steps.ListFixture.value;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.hall.Lane;
import org.skeinday.hall.Placed;
import org.skeinday.hall.Separation;
import org.skeinday.hall.Side;
import org.skeinday.hall.Taped;
import org.skeinday.hall.Verdict;
import org.skeinday.hall.WindingPlace;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

class ReopeningTest {
    private static final Checklist LIST = list(
            Moment.WINDING_PLACE,
            false,
            ok("mount", true),
            value("distances", true, ItemAnswer.PLACE),
            value("lane", false, ItemAnswer.LANE_LENGTH));

    private static Verdict judged(double laneMm, double standMm, double stretchMm) {
        Placed stand = new Placed(
                "Blue stand",
                Placed.Kind.STAND,
                Taped.beside(Length.ofMillimetres(2000), Length.ofMillimetres(standMm), Side.LEFT));
        WindingPlace place = WindingPlace.of(new Lane("Lane 1", Length.ofMillimetres(laneMm)))
                .with(stand)
                .withRoomPastWinder(Length.ofMillimetres(900));
        return Separation.usual().judge(place, Length.ofMillimetres(stretchMm));
    }

    private static List<String> reopened(Verdict before, Verdict now) {
        return Reopening.of(before, now, LIST, UnitSystem.METRIC).stream()
                .map(r -> r.step().id() + ": " + r.reason())
                .toList();
    }

    @Test
    void a_change_that_breaks_nothing_reopens_nothing() {
        assertEquals(List.of(), reopened(judged(4600, 1300, 4000), judged(4600, 1200, 4600)));
    }

    @Test
    void a_stand_moved_too_near_reopens_the_distances_and_says_by_how_much() {
        assertEquals(
                List.of("distances: Blue stand is 50 mm too close to the line: at least 1200 mm."),
                reopened(judged(4600, 1300, 4000), judged(4600, 1150, 4000)));
    }

    @Test
    void a_motor_with_a_longer_stretch_reopens_the_lane() {
        assertEquals(
                List.of("lane: Lane 1 is 100 mm shorter than today's longest stretch of 4700 mm."),
                reopened(judged(4600, 1300, 4600), judged(4600, 1300, 4700)));
    }

    @Test
    void a_shorter_lane_reopens_it_too() {
        assertEquals(
                1, reopened(judged(4600, 1300, 4600), judged(4500, 1300, 4600)).size());
    }

    @Test
    void what_was_as_wrong_before_reopens_nothing_and_what_became_worse_does() {
        assertEquals(List.of(), reopened(judged(4600, 1150, 4000), judged(4600, 1150, 4000)));
        assertEquals(List.of(), reopened(judged(4600, 1150, 4000), judged(4600, 1180, 4000)));
        assertEquals(
                1, reopened(judged(4600, 1150, 4000), judged(4600, 1149, 4000)).size());
    }

    @Test
    void what_cannot_be_judged_any_more_reopens_the_distances() {
        Verdict known = new Verdict(List.of(), List.of());
        Verdict unknown = new Verdict(List.of(), List.of("the stand: two tapes cannot meet"));
        assertEquals(List.of("distances: The stand: two tapes cannot meet."), reopened(known, unknown));
        assertEquals(List.of(), reopened(unknown, known));
    }

    @Test
    void two_findings_of_one_item_are_said_together() {
        Verdict now = judged(4600, 1150, 4000);
        Verdict both = new Verdict(now.findings(), List.of("the fan was moved"));
        List<String> reopened = reopened(Verdict.NOTHING_WRONG, both);
        assertEquals(1, reopened.size());
        assertTrue(reopened.get(0).endsWith("at least 1200 mm. The fan was moved."), reopened.get(0));
    }

    @Test
    void a_list_without_that_item_reopens_its_first_critical_one() {
        Checklist own = list(Moment.WINDING_PLACE, false, ok("mount", true), ok("people", true));
        List<Reopening> reopened =
                Reopening.of(judged(4600, 1300, 4000), judged(4600, 1100, 4000), own, UnitSystem.METRIC);
        assertEquals("mount", reopened.get(0).step().id());
    }
}
