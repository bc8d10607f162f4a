package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** The meter as it was read, floor marks, a motor that hangs on the meter again, and how long a tap can be undone. */
class WindTapsTest {
    @Test
    void the_meter_is_set_after_a_missed_mark_and_none_is_made_up_between() {
        Wind wind = new WindFixture().up(1_000, 2_000).set(5, 3_000).up(4_000).wind();
        assertEquals(
                List.of(1, 2, 5, 6),
                wind.crossings().stream().map(Crossing::level).toList());
        assertEquals(2, wind.level(2_999));
        assertEquals(5, wind.level(3_000));
        assertTrue(wind.crossings().get(2).isSet() && wind.crossings().get(2).rose());
        assertEquals(List.of(), MarkDoubts.of(wind, Optional.empty()));
    }

    @Test
    void a_meter_that_is_set_lower_asks_nobody_why_it_fell() {
        Wind wind = new WindFixture()
                .up(1_000, 2_000, 3_000, 4_000)
                .set(2, 9_000)
                .up(10_000)
                .wind();
        assertEquals(3, wind.level(10_000));
        assertEquals(List.of(), MarkDoubts.of(wind, Optional.empty()));
    }

    @Test
    void a_tap_back_after_the_meter_was_set_is_a_mark_down() {
        Wind wind = new WindFixture().up(1_000).set(4, 2_000).down(3_000).wind();
        assertEquals(3, wind.level(3_000));
        assertEquals(3, wind.crossings().size());
    }

    @Test
    void a_meter_has_no_division_below_zero_and_a_set_mark_no_step() {
        assertThrows(IllegalArgumentException.class, () -> WindMark.set("m", "w", -1, 5, 5));
        assertThrows(IllegalArgumentException.class, () -> WindMark.set("m", "w", 1001, 5, 5));
        assertThrows(IllegalArgumentException.class, () -> new WindMark("m", "w", 1, 5, 5, false, 4));
    }

    @Test
    void turns_come_off_on_the_meter_again_while_the_hold_goes_on_from_the_last_turn() {
        Wind wind = WindFixture.whole()
                .phase(WindPhase.BACK_ON, 140_000)
                .down(142_000)
                .wind();
        assertEquals(Wind.Phase.HOLDING, wind.phase());
        assertEquals(100_000, wind.times().stopped());
        assertEquals(104_000, wind.times().backedOff());
        assertEquals(2, wind.level(142_000));
    }

    @Test
    void it_is_held_since_its_last_turn_with_an_attempt_or_without() {
        WindFixture whole = WindFixture.whole();
        Optional<Long> since = whole.wind().heldSince();
        assertEquals(
                since,
                whole.phase(WindPhase.BACK_ON, 140_000).wind().heldSince(),
                "the meter says nothing of the hold");
        Wind mistaken = whole.phase(WindPhase.BROKE, 150_000)
                .phase(WindPhase.AGAIN, 151_000)
                .wind();
        assertEquals(since, mistaken.heldSince(), "a break that was none");
        assertEquals(Optional.of(1_000_000L + 100_000), since);
        assertEquals(
                Optional.empty(),
                new WindFixture()
                        .phase(WindPhase.STOPPED, 9_000)
                        .phase(WindPhase.AGAIN, 10_000)
                        .wind()
                        .heldSince());
    }

    @Test
    void more_turns_go_on_once_it_hangs_on_the_meter_again() {
        WindFixture back = WindFixture.whole().phase(WindPhase.BACK_ON, 140_000);
        assertEquals(
                Wind.Phase.WALKING_IN,
                back.phase(WindPhase.AGAIN, 141_000).wind().phase());
        Wind later = back.phase(WindPhase.STOPPED, 160_000).wind();
        assertEquals(160_000, later.times().stopped());
    }

    @Test
    void what_broke_does_not_hang_on_the_meter_again_but_a_mistake_is_taken_back() {
        WindFixture broke = new WindFixture()
                .up(1_000)
                .phase(WindPhase.BROKE, 5_000)
                .phase(WindPhase.OFF_METER, 9_000)
                .phase(WindPhase.BACK_ON, 10_000);
        assertEquals(Wind.Phase.OFF_METER, broke.wind().phase());
        Wind whole = broke.phase(WindPhase.AGAIN, 11_000).wind();
        assertEquals(Wind.Phase.WINDING_AT_FULL_STRETCH, whole.phase());
        assertTrue(whole.broke().isEmpty());
    }

    @Test
    void a_floor_mark_is_counted_once_from_whoever_saw_it_first() {
        WindBegun begun = new WindFixture().wind().begun();
        Wind wind = new Wind(
                begun,
                List.of(),
                List.of(),
                List.of(seen("b", 3, 61_000, "phone-2"), seen("a", 3, 60_000, "phone-1"), seen("c", 2, 50_000, "x")),
                null,
                List.of());
        assertEquals(
                List.of("c", "a"),
                wind.floor().stream().map(FloorMarkReached::id).toList());
        assertEquals(OptionalInt.of(3), wind.floorMark());
        assertEquals(OptionalInt.empty(), new WindFixture().wind().floorMark());
        assertThrows(IllegalArgumentException.class, () -> seen("d", 6, 1, "x"));
    }

    private static FloorMarkReached seen(String id, int number, long elapsedMs, String device) {
        return new FloorMarkReached(id, WindFixture.WIND, number, elapsedMs, 1_000_000 + elapsedMs, device);
    }

    @Test
    void a_tap_is_undone_for_ten_seconds_and_what_its_answer_takes() {
        assertTrue(WindUndone.tooLate(5_000, 15_000).isEmpty());
        assertTrue(WindUndone.tooLate(5_000, 17_000).isEmpty());
        assertEquals(
                "A tap can be undone for 10 s; this one is 12 s old. Set the meter, or say what is so now",
                WindUndone.tooLate(5_000, 17_001).orElseThrow());
    }
}
