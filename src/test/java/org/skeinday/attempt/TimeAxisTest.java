package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TimeAxisTest {
    @Test
    void ticks_are_half_minutes_where_times_lie_a_minute_and_a_half_apart() {
        TimeAxis axis = TimeAxis.over(List.of(118_400L, 192_400L));
        assertEquals(new TimeAxis(90_000, 210_000, 30_000), axis);
        assertEquals(List.of(90_000L, 120_000L, 150_000L, 180_000L, 210_000L), axis.ticksMs());
        assertEquals(0.5, axis.share(150_000), 1e-12);
    }

    @Test
    void times_that_are_all_alike_and_none_have_an_axis() {
        assertEquals(new TimeAxis(61_000, 62_000, 1_000), TimeAxis.over(List.of(61_300L, 61_300L)));
        assertEquals(new TimeAxis(60_000, 61_000, 1_000), TimeAxis.over(List.of(60_000L)));
        assertEquals(60_000, TimeAxis.over(List.of()).toMs());
    }

    @Test
    void every_time_lies_on_an_axis_of_few_steps() {
        var random = new Random(11);
        for (int i = 0; i < 2_000; i++) {
            int longest = 1 + random.nextInt(i % 10 == 0 ? 7_200_000 : 400_000);
            List<Long> times =
                    random.longs(1 + random.nextInt(9), 0, longest).boxed().toList();
            TimeAxis axis = TimeAxis.over(times);
            times.forEach(ms -> assertTrue(axis.share(ms) >= 0 && axis.share(ms) <= 1, axis + " " + ms));
            assertTrue(axis.ticksMs().size() <= 6 || axis.stepMs() == 600_000, axis.toString());
            assertEquals(axis.toMs(), axis.ticksMs().get(axis.ticksMs().size() - 1));
        }
    }
}
