package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

class SeparationTest {
    private static final Lane LANE = new Lane("lane 1", mm(4600));
    private static final WindingPlace PLACE = WindingPlace.of(LANE);

    private static Length mm(double mm) {
        return Length.ofMillimetres(mm);
    }

    private static Verdict judge(WindingPlace place, @Nullable Length stretch) {
        return Separation.usual().judge(place, stretch);
    }

    private static Placed stand(String name, double along, double beside) {
        return new Placed(name, Placed.Kind.STAND, Taped.beside(mm(along), mm(beside), Side.LEFT));
    }

    @Test
    void a_lane_as_long_as_the_longest_stretch_is_long_enough_and_one_millimetre_less_is_not() {
        assertTrue(judge(PLACE, mm(4600)).isClear());
        Verdict verdict = judge(PLACE, mm(4601));
        assertEquals(Rule.LANE_TOO_SHORT, verdict.findings().get(0).rule());
        assertEquals(1, verdict.findings().get(0).shortByMm());
    }

    @Test
    void feet_need_half_a_metre_past_full_stretch() {
        assertTrue(judge(PLACE.withRoomPastWinder(mm(500)), mm(4600)).isClear());
        Verdict verdict = judge(PLACE.withRoomPastWinder(mm(499)), mm(4600));
        assertEquals(Rule.NO_STANDING_ROOM, verdict.findings().get(0).rule());
        assertEquals(1, verdict.findings().get(0).shortByMm());
    }

    @Test
    void a_shorter_stretch_leaves_room_inside_the_lane() {
        assertTrue(judge(PLACE.withRoomPastWinder(mm(100)), mm(4200)).isClear());
        assertFalse(judge(PLACE.withRoomPastWinder(mm(99)), mm(4200)).isClear());
    }

    @Test
    void room_is_asked_for_up_to_the_lanes_end_when_the_stretch_is_longer_or_not_known() {
        assertFalse(judge(PLACE.withRoomPastWinder(mm(500)), mm(9000)).has(Rule.NO_STANDING_ROOM));
        assertTrue(judge(PLACE.withRoomPastWinder(mm(499)), null).has(Rule.NO_STANDING_ROOM));
    }

    @Test
    void what_nobody_measured_is_named_and_breaks_nothing() {
        Verdict verdict = judge(PLACE, null);
        assertTrue(verdict.isClear());
        assertFalse(verdict.isComplete());
        assertEquals(
                List.of(
                        "today's longest stretch is not known",
                        "the room past the winder end is not measured",
                        "nothing beside the line is measured yet"),
                verdict.unknown());
        assertTrue(judge(PLACE.withRoomPastWinder(mm(600)).with(stand("blue stand", 2000, 1300)), mm(4500))
                .isComplete());
    }

    @Test
    void tapes_that_cannot_meet_are_not_judged_and_named() {
        Placed lost = new Placed("blue stand", Placed.Kind.STAND, Taped.fromEnds(mm(1000), mm(1000), Side.LEFT));
        Verdict verdict = judge(PLACE.with(lost), null);
        assertTrue(verdict.isClear());
        assertTrue(verdict.unknown().stream().anyMatch(u -> u.startsWith("blue stand: two tapes of 1000 mm")));
    }

    @Test
    void a_setting_moves_its_limit_only() {
        Separation usual = Separation.usual();
        Separation wider = new Separation(
                mm(1300),
                usual.people(),
                usual.reader(),
                usual.zoneLength(),
                usual.zoneHalfWidth(),
                usual.lanes(),
                usual.standing());
        WindingPlace place = PLACE.with(stand("blue stand", 2000, 1250));
        assertTrue(usual.judge(place, null).isClear());
        assertEquals(50, wider.judge(place, null).findings().get(0).shortByMm());
    }

    @Test
    void four_feet_are_more_than_the_limit_of_models() {
        Placed stand =
                new Placed("blue stand", Placed.Kind.STAND, Taped.beside(mm(2000), Length.ofFeet(4), Side.RIGHT));
        assertTrue(judge(PLACE.with(stand), null).isClear());
    }

    @Test
    void a_finding_says_in_the_readers_units_what_is_too_close_and_by_how_much() {
        Shortfall near = judge(PLACE.with(stand("Blue stand", 2000, 1100)), null)
                .findings()
                .get(0);
        assertEquals("Blue stand is 100 mm too close to the line: at least 1200 mm.", near.text(UnitSystem.METRIC));
        assertEquals("Blue stand is 4.0 in too close to the line: at least 47.2 in.", near.text(UnitSystem.INCH));
    }

    @Test
    void a_millimetre_is_never_said_to_be_nothing() {
        Shortfall near = judge(PLACE.with(stand("Blue stand", 2000, 1199.7)), null)
                .findings()
                .get(0);
        assertTrue(near.text(UnitSystem.METRIC).contains(" 1 mm too close"), near.text(UnitSystem.METRIC));
        assertTrue(near.text(UnitSystem.INCH).contains(" 0.1 in too close"), near.text(UnitSystem.INCH));
    }

    @Test
    void the_end_that_is_too_close_is_named() {
        assertEquals("the winder end", against(4700, 500));
        assertEquals("the line", against(4600, 500));
        assertEquals("the line", against(0, 500));
    }

    private static String against(double along, double beside) {
        return judge(PLACE.with(stand("s", along, beside)), null)
                .findings()
                .get(0)
                .against();
    }

    @Test
    void a_name_stands_once_at_a_place() {
        assertThrows(
                IllegalArgumentException.class, () -> PLACE.with(stand("blue", 0, 2000), stand("blue", 100, 2000)));
    }

    @Test
    void a_separation_of_nothing_is_refused() {
        Length nothing = mm(0);
        Separation usual = Separation.usual();
        assertThrows(
                IllegalArgumentException.class,
                () -> new Separation(
                        nothing,
                        usual.people(),
                        usual.reader(),
                        usual.zoneLength(),
                        usual.zoneHalfWidth(),
                        usual.lanes(),
                        usual.standing()));
    }

    @Test
    void each_rule_has_a_reason() {
        for (Rule rule : Rule.values()) {
            assertTrue(rule.reason().endsWith("."), rule.name());
        }
    }
}
