package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.skeinday.units.Length;

class FloorMarkTest {
    private static WindingPlan plan(String share) {
        return WindingPlan.compute(new WindingRequest(
                Length.ofMillimetres(400),
                new BigDecimal("2000"),
                BigDecimal.TEN,
                BigDecimal.ONE,
                new BigDecimal("5"),
                new BigDecimal(share),
                Length.ofMillimetres(400),
                4,
                null));
    }

    private static FloorMark at(double count) {
        return FloorMark.at(count, plan("0.60"));
    }

    /** 200 crank turns, 120 of them at full stretch: marks at 120, 140, 160, 180, 200 and every 400 mm. */
    @Test
    void one_stands_at_the_last_mark_whose_count_is_reached() {
        assertEquals(new FloorMark(2, 140, Length.ofMillimetres(1_600)), at(140));
        assertEquals(new FloorMark(1, 120, Length.ofMillimetres(2_000)), at(139.9));
        assertEquals(4, at(199.9).number());
        assertEquals(new FloorMark(5, 200, Length.ofMillimetres(400)), at(200));
    }

    @Test
    void at_full_stretch_and_beyond_the_finish_there_is_a_mark_too() {
        assertEquals(1, at(0).number());
        assertEquals(5, at(230).number());
    }

    @Test
    void all_turns_at_full_stretch_leave_one_at_the_first_mark_until_they_are_on() {
        assertEquals(1, FloorMark.at(199, plan("1")).number());
        assertEquals(5, FloorMark.at(200, plan("1")).number());
    }
}
