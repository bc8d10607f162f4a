package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Taps come in late and out of order: from outboxes, over a weak network, twice. */
class WindProperties {
    /** Other seeds: -Dskeinday.seed=7 runs from 7 on. */
    static LongStream seeds() {
        long first = Long.getLong("skeinday.seed", 20_261_125L);
        return LongStream.range(first, first + 10);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void any_order_of_arrival_of_the_same_taps_gives_the_same_wind(long seed) {
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        for (int round = 0; round < 50; round++) {
            WindFixture taps = taps(random);
            Wind wind = taps.wind();
            String all = everything(wind);
            assertTrue(wind.crossings().stream().allMatch(c -> c.level() >= 0), all);
            for (int shuffle = 0; shuffle < 4; shuffle++) {
                Wind late =
                        Wind.of(wind.begun(), twice(taps.phases, random), twice(taps.marks, random), wind.counted());
                assertEquals(wind, late);
                assertEquals(all, everything(late));
            }
        }
    }

    /** Up to 40 marks and some phases, several of them in the same millisecond. */
    private static WindFixture taps(Random random) {
        WindFixture taps = new WindFixture();
        int marks = random.nextInt(40);
        for (int i = 0; i < marks; i++) {
            long elapsed = random.nextInt(500) * 250L;
            if (random.nextInt(4) == 0) {
                taps.down(elapsed);
            } else {
                taps.up(elapsed);
            }
        }
        for (String phase : WindPhase.PHASES) {
            if (random.nextInt(3) > 0) {
                taps.phase(phase, random.nextInt(500) * 250L);
            }
        }
        taps.leaveOut("m" + (1 + random.nextInt(40)));
        return random.nextBoolean() ? taps.counted(120, 200, 4.0) : taps;
    }

    private static <T> List<T> twice(List<T> taps, Random random) {
        List<T> shuffled = new ArrayList<>(taps);
        taps.stream().filter(tap -> random.nextInt(5) == 0).forEach(shuffled::add);
        Collections.shuffle(shuffled, random);
        return shuffled;
    }

    private static String everything(Wind wind) {
        return String.join(
                "\n",
                "" + wind.phase(),
                "" + wind.crossings(),
                "" + wind.peakTorque() + wind.launchTorque(),
                "" + wind.windingReadings(),
                "" + wind.unwindingReadings(),
                "" + wind.holdReadings(),
                "" + wind.turns().at(60_000) + wind.word(60_000),
                "" + MarkDoubts.of(wind, Optional.empty()));
    }
}
