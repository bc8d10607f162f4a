package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BreakCauseTest {
    private static MotorStep broke() {
        var motor = new MotorAdded("m", "A3", "b", "Reed", "cw", 470, "470 mm", 1.6, "1.6 g", null, 0);
        return new MotorLife(motor, null, false, 0)
                .step(MotorDeed.BREAK, new MotorStep.By("s", 1, "p", "d"), null, MotorStep.Told.NOTHING);
    }

    @Test
    void a_break_that_nobody_has_spoken_of_is_the_rubber_s_and_no_test() {
        assertTrue(broke().saysOfTheRubber());
        assertNull(broke().test());
        assertTrue(broke().partedAt(BreakPlace.UNKNOWN).saysOfTheRubber(), "looked at, and not to be told");
    }

    @Test
    void what_anybody_saw_outside_the_rubber_takes_no_break_out_before_the_coach_says_so() {
        MotorStep seen = broke().partedAt(BreakPlace.KNOT);
        assertTrue(seen.saysOfTheRubber());
        assertTrue(seen.wasSeenOutsideTheRubber());
        assertEquals(BreakCause.KNOT, seen.cause().orElseThrow(), "as it is proposed to the coach");
        assertFalse(seen.by(BreakCause.KNOT).saysOfTheRubber());
    }

    @ParameterizedTest
    @EnumSource(names = {"KNOT", "RING", "HOOK", "DROPPED"})
    void a_cause_outside_the_rubber_says_nothing_of_it(BreakCause cause) {
        MotorStep told = broke().by(cause);
        assertFalse(told.saysOfTheRubber());
        assertEquals(cause.word(), told.parted());
        assertEquals(false, told.test());
    }

    @Test
    void what_the_coach_says_last_holds_and_where_it_was_seen_to_part_stays() {
        MotorStep strand = broke().partedAt(BreakPlace.STRAND).by(BreakCause.TEST);
        assertEquals("strand", strand.parted());
        assertEquals(true, strand.test());
        MotorStep dropped = strand.by(BreakCause.DROPPED);
        assertEquals("dropped", dropped.parted());
        MotorStep after = dropped.by(BreakCause.ACCIDENT);
        assertEquals(List.of("strand", false), List.of(String.valueOf(after.parted()), after.test()));
        assertNull(broke().by(BreakCause.ACCIDENT).parted(), "nobody looked where");
    }
}
