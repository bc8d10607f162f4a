package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.units.FlightTime;

class OfficialTimeTest {
    private static TimeRule rule(Take take, Rounding rounding, long stepMs) {
        return new TimeRule(take, Take.LONGER, rounding, stepMs, false);
    }

    private static List<FlightTime> watches(long... ms) {
        List<FlightTime> times = new ArrayList<>();
        for (long one : ms) {
            times.add(new FlightTime(one));
        }
        return times;
    }

    @Test
    void half_a_step_goes_up_and_a_hair_less_goes_down() {
        TimeRule nearest = rule(Take.MEAN, Rounding.NEAREST, 100);
        assertEquals(100, OfficialTime.reduce(watches(50), nearest).millis());
        assertEquals(0, OfficialTime.reduce(watches(49), nearest).millis());
        assertEquals(0, OfficialTime.reduce(watches(49, 50, 50), nearest).millis()); // 49.666…
    }

    @Test
    void a_time_on_the_step_stays_whichever_way_it_is_rounded() {
        for (Rounding rounding : Rounding.values()) {
            assertEquals(
                    83_400,
                    OfficialTime.reduce(watches(83_400), rule(Take.MIDDLE, rounding, 100))
                            .millis());
        }
        assertEquals(
                83_500,
                OfficialTime.reduce(watches(83_401), rule(Take.MIDDLE, Rounding.UP, 100))
                        .millis());
        assertEquals(
                83_300,
                OfficialTime.reduce(watches(83_399), rule(Take.MIDDLE, Rounding.DOWN, 100))
                        .millis());
    }

    @Test
    void the_sentence_names_every_reading_to_its_last_digit() {
        OfficialTime official =
                OfficialTime.reduce(watches(61_210, 61_305, 61_301), rule(Take.MIDDLE, Rounding.DOWN, 100));
        assertEquals(61_300, official.millis());
        for (String reading : List.of("1:01.21", "1:01.305", "1:01.301", "middle", "down")) {
            assertTrue(official.how().contains(reading), official.how());
        }
    }

    @Test
    void a_middle_that_does_not_exist_is_refused_with_what_to_say_instead() {
        var silent = new TimeRule(Take.MIDDLE, null, Rounding.DOWN, 100, false);
        assertTrue(refusal(watches(1, 2), silent).contains("longer, mean or shorter"));
        assertTrue(refusal(watches(1, 2, 3, 4), rule(Take.MIDDLE, Rounding.DOWN, 100))
                .contains("but were 4"));
        assertTrue(refusal(List.of(), silent).contains("but had none"));
        assertThrows(IllegalArgumentException.class, () -> new TimeRule(Take.MEAN, Take.MIDDLE, Rounding.UP, 1, false));
        assertThrows(IllegalArgumentException.class, () -> rule(Take.MEAN, Rounding.UP, 0));
    }

    private static String refusal(List<FlightTime> watches, TimeRule rule) {
        return String.valueOf(assertThrows(IllegalArgumentException.class, () -> OfficialTime.reduce(watches, rule))
                .getMessage());
    }

    /** Against decimal arithmetic of the JDK, in any order of the watches. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void a_mean_is_exact_and_no_order_of_watches_matters(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 300; i++) {
            List<FlightTime> times = new ArrayList<>();
            for (int n = 1 + random.nextInt(3); n > 0; n--) {
                times.add(new FlightTime(random.nextInt(600_000)));
            }
            long step = List.of(1L, 10L, 100L, 1000L).get(random.nextInt(4));
            BigDecimal mean = times.stream()
                    .map(t -> BigDecimal.valueOf(t.millis()))
                    .reduce(BigDecimal.ZERO, BigDecimal::add)
                    .divide(BigDecimal.valueOf(times.size() * step), 12, RoundingMode.FLOOR);
            long expected = mean.setScale(0, RoundingMode.FLOOR).longValueExact() * step;
            Collections.shuffle(times, random);
            assertEquals(
                    expected,
                    OfficialTime.reduce(times, rule(Take.MEAN, Rounding.DOWN, step))
                            .millis());
        }
    }
}
