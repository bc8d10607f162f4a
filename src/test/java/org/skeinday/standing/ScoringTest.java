package org.skeinday.standing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;

class ScoringTest {
    private static EventAdded event(int attempts, String score, int bestOf, long minimumMs) {
        return new EventAdded(
                "e",
                "Day",
                "hosting",
                "2026-05-09",
                null,
                null,
                null,
                attempts,
                0,
                score,
                bestOf,
                2,
                "middle",
                "mean",
                10,
                "down",
                false,
                minimumMs,
                10,
                null,
                null);
    }

    private static FlightRules rules(int repeats, String ifShort, String ties, int dropBest, int dropWorst) {
        return rules(repeats, ifShort, ties, dropBest, dropWorst, null);
    }

    private static FlightRules rules(
            int repeats, String ifShort, String ties, int dropBest, int dropWorst, @Nullable String meanRanks) {
        return new FlightRules(
                "e", null, null, repeats, null, ifShort, "stands", 60_000, "keep", ties, dropBest, dropWorst, 0,
                "release", null, null, meanRanks);
    }

    private static List<DecidedFlight> flown(String seconds) {
        List<DecidedFlight> flown = new ArrayList<>();
        for (String word : seconds.split(" ")) {
            String id = "f" + flown.size();
            flown.add(
                    word.equals("void")
                            ? DecidedFlight.withoutTime(id, "threw it")
                            : word.equals("again")
                                    ? new DecidedFlight(id, 0, "flown again")
                                    : new DecidedFlight(id, Math.round(Double.parseDouble(word) * 1000)));
        }
        return flown;
    }

    /** A void flight uses one up, one flown again does not; a short one does when no repeat is left. */
    @ParameterizedTest
    @CsvSource({
        "60 70, 1, 130000",
        "60 70 void, 0, 130000",
        "60 70 again, 1, 130000",
        "59.999 70, 2, 70000",
        "59.999 59.999 70, 1, 70000",
        "59.999 59.999 70 80 90, 0, 150000"
    })
    void flights_left_and_the_sum_of_the_best_two(String times, int left, long sumMs) {
        Scoring scoring = Scoring.of(event(3, "sum", 2, 60_000), rules(1, "no-time", "next", 0, 0));
        assertEquals(left, scoring.tally(flown(times)).flightsLeft());
        assertEquals(Optional.of(sumMs), scoring.countedMs(flown(times)));
    }

    @Test
    void a_second_short_flight_counts_where_the_rules_say_so() {
        Scoring scoring = Scoring.of(event(3, "best", 1, 60_000), rules(0, "counts", "next", 0, 0));
        assertEquals(Optional.of(42_000L), scoring.countedMs(flown("42")));
    }

    /**
     * Five tries, the best and the worst dropped: WCA Regulations 9f8, 9f9, turned to longer times, which are better here; a
     * try without a time is the worst, two leave no score.
     */
    @ParameterizedTest
    @CsvSource({
        "10.01 12 11 13 11.5, 11500",
        "10 12 11 13 void, 11000",
        "10 12 11 void void, ",
        "10 12 11 13, 11000",
        "10 12 11, ",
        "10.004 10.005 10.007 1 99, 10010"
    })
    void the_mean_without_best_and_worst(String times, Long scoreMs) {
        Scoring scoring = Scoring.of(event(5, "mean", 5, 0), rules(0, "no-time", "next", 1, 1));
        assertEquals(Optional.ofNullable(scoreMs), scoring.countedMs(flown(times)));
        scoring.countedMs(flown(times)).ifPresent(ms -> assertEquals(ms, scoring.shownMs(ms)));
    }

    /**
     * Means that differ by less than is shown. Where nobody says, a mean of the best is ordered exactly and one without best
     * and worst as rounded; WCA Regulations 9f8 and 9f9 round before they order, and equal means are parted by the best single.
     */
    @ParameterizedTest
    @CsvSource({
        "0, , A1 B2",
        "0, exact, A1 B2",
        "0, rounded, B1 A2",
        "1, , B1 A2",
        "1, exact, A1 B2",
        "1, rounded, B1 A2"
    })
    void means_are_ordered_exactly_or_as_they_are_shown(int dropped, @Nullable String ranks, String places) {
        Scoring scoring = Scoring.of(event(5, "mean", 3, 0), rules(0, "no-time", "best", dropped, dropped, ranks));
        Map<String, List<DecidedFlight>> flown = new LinkedHashMap<>();
        flown.put("A", flown(dropped == 0 ? "10.004 10.004 10.004" : "10.004 10.004 10.004 10.004 1"));
        flown.put("B", flown(dropped == 0 ? "10.006 10 10.002" : "10.006 10.002 10.002 10.002 1"));
        List<Standings.Placed> order = scoring.order(flown);
        assertEquals(places, order.stream().map(p -> p.entry() + p.place()).collect(Collectors.joining(" ")));
        order.forEach(p -> assertEquals(10_000, scoring.shownMs(p.countedMs().orElseThrow())));
    }

    @ParameterizedTest
    @CsvSource({"next, A1 B2 C3", "best, A1 B1 C3", "shared, A1 B1 C1"})
    void ties_are_parted_as_the_rules_say(String ties, String places) {
        Scoring scoring = Scoring.of(event(3, "sum", 2, 0), rules(0, "no-time", ties, 0, 0));
        Map<String, List<DecidedFlight>> flown = new LinkedHashMap<>();
        flown.put("A", flown("70 50 30"));
        flown.put("B", flown("50 70 20"));
        flown.put("C", flown("60 60 60"));
        assertEquals(
                places,
                scoring.order(flown).stream().map(p -> p.entry() + p.place()).collect(Collectors.joining(" ")));
    }
}
