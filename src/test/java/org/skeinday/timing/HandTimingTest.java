package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.timing.HandTiming.Outcome;
import org.skeinday.timing.HandTiming.Way;

class HandTimingTest {
    private static final int FLIGHTS = 40_000;

    private static Map<Way, Outcome> outcomes = Map.of();

    @BeforeAll
    static void fly() {
        outcomes = HandTiming.fly(FLIGHTS, 8);
    }

    private static Outcome of(Way way) {
        Outcome outcome = outcomes.get(way);
        if (outcome == null) {
            throw new IllegalStateException("Nobody flew " + way);
        }
        return outcome;
    }

    /** Order statistics of the normal distribution, in SD of one watch (calc); 1 % is three times the error of drawing. */
    @ParameterizedTest
    @CsvSource({
        "ONE, 1, 0",
        "MEAN_OF_TWO, 0.7071, 0", // 1/√2
        "LONGER_OF_TWO, 0.8256, 0.5642", // √(1 − 1/π), 1/√π
        "MIDDLE_OF_THREE, 0.6698, 0", // √(1 − √3/π)
        "MEAN_OF_THREE, 0.5774, 0", // 1/√3
    })
    void each_way_spreads_and_shifts_the_official_time_as_theory_says(Way way, double sd, double shift) {
        assertEquals(sd, of(way).sd() / HandTiming.WATCH_MS, 0.011 * sd);
        assertEquals(shift, of(way).mean() / HandTiming.WATCH_MS, 0.015);
    }

    /** Faultless hands, and yet: P(|difference| > 0.3 s) of two, P(range > 0.3 s) of three, normal (calc). */
    @ParameterizedTest
    @CsvSource({"ONE, 0, 0", "MEAN_OF_TWO, 0.0321, 0.003", "MIDDLE_OF_THREE, 0.0814, 0.005"})
    void the_spread_limit_asks_a_person_about_few_flights_without_a_mistake(Way way, double share, double within) {
        assertEquals(share, of(way).apart(), within);
    }

    /** The picture in DEVELOPERS.md; a changed one lies in target, to be looked at and put in its place. */
    @Test
    void the_picture_for_contributors_shows_these_figures() throws IOException {
        String svg = HandTimingPicture.svg(outcomes);
        Files.createDirectories(Path.of("target"));
        Files.writeString(Path.of("target/hand-timing.svg"), svg);
        assertEquals(
                "The middle of three cuts the spread by 33 %; the longer of two reads 0.06 s long",
                HandTimingPicture.title(outcomes));
        assertEquals(svg, Files.readString(Path.of("src/test/pictures/hand-timing.svg")));
    }
}
