package org.skeinday.standing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.skeinday.contest.FlightRules;
import org.skeinday.units.FlightTime;

class FlightTallyTest {
    /**
     * A minimum of 60 s and one repeat for each official flight: FAI Sporting Code Section 4 F1, 3.4.3–3.4.9 (older
     * edition). What becomes of a second short one is an own default.
     */
    private static FlightsRule sixtySeconds(int flights) {
        return new FlightsRule(flights, 60_000, 1, flights, FlightRules.IfShort.NO_TIME);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/standing/official-flights.csv", numLinesToSkip = 1)
    void a_flight_at_the_minimum_is_official_and_one_below_it_an_attempt(
            int flights,
            int repeatsPerFlight,
            int repeatsInAll,
            FlightRules.IfShort ifShort,
            String flown,
            String verdicts,
            int flightsLeft,
            int repeatsLeft,
            String source) {
        var rule = new FlightsRule(flights, 60_000, repeatsPerFlight, repeatsInAll, ifShort);
        FlightTally tally = FlightTally.of(flown(flown), rule);
        assertEquals(
                verdicts,
                tally.verdicts().stream().map(v -> v.standing().name()).collect(Collectors.joining(" ")),
                source);
        assertEquals(flightsLeft, tally.flightsLeft(), source);
        assertEquals(repeatsLeft, tally.repeatsLeft(), source);
    }

    private static List<DecidedFlight> flown(String words) {
        List<DecidedFlight> flown = new ArrayList<>();
        for (String word : words.split(" ")) {
            String id = "flight " + (flown.size() + 1);
            flown.add(
                    word.equals("void")
                            ? new DecidedFlight(id, 90_000, "flown again after a collision")
                            : new DecidedFlight(id, FlightTime.parse(word).millis()));
        }
        return flown;
    }

    @Test
    void the_short_flight_that_may_be_repeated_is_named_until_it_is() {
        var rule = sixtySeconds(6);
        assertEquals(Optional.empty(), FlightTally.of(List.of(), rule).repeatable());
        assertEquals(
                Optional.of("flight 2"), FlightTally.of(flown("60 50"), rule).repeatable());
        assertEquals(
                Optional.of("flight 2"),
                FlightTally.of(flown("60 50 void"), rule).repeatable());
        assertEquals(Optional.empty(), FlightTally.of(flown("60 50 70"), rule).repeatable());
        assertEquals(Optional.empty(), FlightTally.of(flown("60 50 50"), rule).repeatable());
    }

    @Test
    void only_official_times_go_into_the_score_and_each_flight_has_its_reason() {
        FlightTally tally = FlightTally.of(flown("59.99 80 void 50 40 70"), sixtySeconds(3));
        assertEquals(List.of(80_000L, 70_000L), tally.officialMs());
        assertEquals(
                List.of(
                        "0:59.99, below 1:00: not official, may be repeated",
                        "1:20.00, official flight 1 of 3",
                        "1:30.00, void: flown again after a collision",
                        "0:50.00, below 1:00: not official, may be repeated",
                        "0:40.00, below 1:00, no repeat left: official flight 2 of 3, without a time",
                        "1:10.00, official flight 3 of 3"),
                tally.verdicts().stream().map(FlightTally.Verdict::reason).toList());
    }

    @Test
    void settings_beyond_their_range_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> sixtySeconds(0));
        assertThrows(IllegalArgumentException.class, () -> new FlightsRule(1, -1, 0, 0, FlightRules.IfShort.COUNTS));
        assertThrows(IllegalArgumentException.class, () -> new DecidedFlight("a", -1));
    }
}
