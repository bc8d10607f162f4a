package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.units.Length;

class TapedTest {
    private static final Lane LANE = new Lane("lane 1", mm(4000));

    private static Length mm(double mm) {
        return Length.ofMillimetres(mm);
    }

    @Test
    void left_is_seen_from_the_mount_and_above_zero() {
        assertEquals(
                new Spot(1000, 300), Taped.beside(mm(1000), mm(300), Side.LEFT).on(LANE));
        assertEquals(
                new Spot(1000, -300),
                Taped.beside(mm(1000), mm(300), Side.RIGHT).on(LANE));
        assertEquals(
                new Spot(-200, -300),
                Taped.behindMount(mm(200), mm(300), Side.RIGHT).on(LANE));
    }

    /** 5-12-13 and 35-12-37: the foot of the height divides 4000 into 500 and 3500. */
    @Test
    void two_tapes_from_the_ends_meet_where_two_right_triangles_do() {
        Spot spot = Taped.fromEnds(mm(1300), mm(3700), Side.RIGHT).on(LANE);
        assertEquals(500, spot.alongMm(), 1e-9);
        assertEquals(-1200, spot.besideMm(), 1e-9);
    }

    @Test
    void tapes_that_are_too_short_to_meet_say_so() {
        String why =
                Taped.fromEnds(mm(1500), mm(2000), Side.LEFT).cannotMeet(LANE).orElseThrow();
        assertEquals(
                "two tapes of 1500 mm and 2000 mm cannot meet across a lane of 4000 mm; together they must reach at least"
                        + " that far",
                why);
    }

    @Test
    void tapes_that_differ_by_more_than_the_lane_say_so() {
        Taped at = Taped.fromEnds(mm(6000), mm(1000), Side.LEFT);
        String why = at.cannotMeet(LANE).orElseThrow();
        assertTrue(why.contains("the ends are only 4000 mm apart"), why);
        assertEquals(
                why,
                assertThrows(IllegalArgumentException.class, () -> at.on(LANE)).getMessage());
    }

    @Test
    void a_careless_centimetre_on_the_line_is_taken_and_the_next_millimetre_is_not() {
        Taped near = Taped.fromEnds(mm(1990), mm(2000), Side.LEFT);
        assertEquals(Optional.empty(), near.cannotMeet(LANE));
        assertEquals(0, near.on(LANE).besideMm());
        assertTrue(
                Taped.fromEnds(mm(1989), mm(2000), Side.LEFT).cannotMeet(LANE).isPresent());
        assertEquals(
                Optional.empty(), Taped.fromEnds(mm(5010), mm(1000), Side.LEFT).cannotMeet(LANE));
        assertTrue(
                Taped.fromEnds(mm(5011), mm(1000), Side.LEFT).cannotMeet(LANE).isPresent());
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 23, 47})
    void tapes_from_both_ends_find_any_place_again(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            Spot there = new Spot(random.nextDouble() * 12_000 - 4000, 50 + random.nextDouble() * 6000);
            Taped taped = Taped.fromEnds(
                    mm(there.distanceTo(LANE.mountEnd())), mm(there.distanceTo(LANE.winderEnd())), Side.LEFT);
            assertEquals(0, taped.on(LANE).distanceTo(there), 1e-5, "seed " + seed + " " + there);
        }
    }

    @Test
    void a_side_is_left_or_right() {
        assertEquals(Side.LEFT, Side.ofWord("left"));
        assertThrows(IllegalArgumentException.class, () -> Side.ofWord("port"));
    }

    @Test
    void another_lane_has_the_length_between_its_ends() {
        OtherLane other = new OtherLane(
                "lane 2", Taped.beside(mm(0), mm(2000), Side.LEFT), Taped.beside(mm(3000), mm(6000), Side.LEFT));
        assertEquals(5000, other.length(LANE).millimetres(), 1e-9);
        assertEquals(Optional.empty(), other.cannotMeet(LANE));
    }

    @Test
    void another_lane_whose_tapes_cannot_meet_names_its_end() {
        Taped good = Taped.beside(mm(0), mm(2000), Side.LEFT);
        Taped bad = Taped.fromEnds(mm(100), mm(100), Side.LEFT);
        assertTrue(new OtherLane("lane 2", bad, good)
                .cannotMeet(LANE)
                .orElseThrow()
                .startsWith("its mount: two tapes"));
        assertTrue(new OtherLane("lane 2", good, bad)
                .cannotMeet(LANE)
                .orElseThrow()
                .startsWith("its winder end: two tapes"));
        assertTrue(new OtherLane("lane 2", good, good)
                .cannotMeet(LANE)
                .orElseThrow()
                .contains("0 mm apart"));
    }
}
