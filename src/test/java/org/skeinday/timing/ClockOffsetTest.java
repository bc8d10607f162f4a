package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class ClockOffsetTest {
    @ParameterizedTest
    @CsvFileSource(resources = "/published/timing/clock.csv", numLinesToSkip = 1)
    void an_exchange_gives_the_published_offset_delay_and_bound(
            long t1, long t2, long t3, long t4, long offset, long delay, long bound, String source) {
        var exchange = new ClockExchange(t1, t2, t3, t4);
        assertEquals(delay, exchange.delay(), source);
        assertEquals(new ClockOffset(offset, bound), exchange.offset(), source);
    }

    /** Ways of 2 to 200 ms, one in ten with a spike of up to 3 s, each way drawn by itself. */
    private static ClockExchange drawn(Random random, long trueOffset) {
        long there = way(random);
        long back = way(random);
        long t1 = random.nextInt(1_000_000_000);
        long served = random.nextInt(5_000);
        return new ClockExchange(
                t1, t1 + there + trueOffset, t1 + there + served + trueOffset, t1 + there + served + back);
    }

    private static long way(Random random) {
        return 2_000 + random.nextInt(198_000) + (random.nextInt(10) == 0 ? random.nextInt(3_000_000) : 0);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void the_true_offset_is_always_within_the_bound(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < 1000; round++) {
            long trueOffset = random.nextLong(-86_400_000_000L, 86_400_000_000L);
            List<ClockExchange> exchanges = new ArrayList<>();
            for (int n = 1 + random.nextInt(20); n > 0; n--) {
                exchanges.add(drawn(random, trueOffset));
            }
            ClockOffset offset = ClockOffset.fastest(exchanges, 16);
            assertTrue(Math.abs(trueOffset - offset.offset()) <= offset.bound(), exchanges.toString());
            exchanges.forEach(e -> assertFalse(e.offset().contradicts(offset)));
        }
    }

    /** All the asymmetry on one way: no smaller bound would be true. */
    @Test
    void the_bound_is_reached_when_one_way_takes_all_the_time() {
        assertEquals(new ClockOffset(50, 50), new ClockExchange(0, 100, 100, 100).offset()); // true: 0
        assertEquals(new ClockOffset(-50, 50), new ClockExchange(0, 0, 0, 100).offset());
    }

    @Test
    void the_fastest_of_the_last_counts_and_older_ones_do_not() {
        List<ClockExchange> exchanges = new ArrayList<>();
        exchanges.add(new ClockExchange(0, 1, 1, 2));
        for (int i = 0; i < 8; i++) {
            exchanges.add(new ClockExchange(0, 100 + i, 100 + i, 200));
        }
        exchanges.set(4, new ClockExchange(0, 30, 30, 40));
        assertEquals(new ClockOffset(10, 20), ClockOffset.fastest(exchanges, 8));
        assertEquals(new ClockOffset(0, 1), ClockOffset.fastest(exchanges, 9));
    }

    @Test
    void a_clock_that_was_set_in_between_is_seen() {
        assertFalse(new ClockOffset(0, 50).contradicts(new ClockOffset(90, 40)));
        assertTrue(new ClockOffset(0, 50).contradicts(new ClockOffset(91, 40)));
    }

    @Test
    void moments_out_of_order_and_too_few_or_many_exchanges_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> new ClockExchange(1, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new ClockExchange(0, 1, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new ClockExchange(0, 0, 11, 10));
        var one = List.of(new ClockExchange(0, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> ClockOffset.fastest(one, 7));
        assertThrows(IllegalArgumentException.class, () -> ClockOffset.fastest(one, 17));
        assertThrows(IllegalArgumentException.class, () -> ClockOffset.fastest(List.of(), 8));
        assertThrows(IllegalArgumentException.class, () -> new ClockOffset(0, -1));
    }
}
