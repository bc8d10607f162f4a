package org.skeinday.standing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.skeinday.contest.ScoreKind;
import org.skeinday.timing.RoundingBySize;
import org.skeinday.units.FlightTime;

class ScoresPublishedTest {
    private static List<Long> times(String text) {
        return Arrays.stream(text.strip().split(" "))
                .filter(word -> !word.isBlank())
                .map(word -> FlightTime.parse(word).millis())
                .toList();
    }

    private static Optional<Long> time(String text) {
        return text.equals("DNF") || text.equals("-")
                ? Optional.empty()
                : Optional.of(FlightTime.parse(text).millis());
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/standing/best-of.csv", numLinesToSkip = 1)
    void the_best_so_many_flights_count(ScoreKind kind, int bestOf, String flown, String counted, String source) {
        assertEquals(time(counted), new ScoreRule(kind, bestOf).countedMs(times(flown)), source);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/standing/average-of-five.csv", numLinesToSkip = 1)
    void of_five_the_best_and_the_worst_are_dropped(String tries, String mean, String source) {
        List<Optional<Long>> five =
                Arrays.stream(tries.split(" ")).map(ScoresPublishedTest::time).toList();
        assertEquals(time(mean), TrimmedMean.OF_FIVE.of(five).meanMs(), source);
    }

    @Test
    void a_mean_says_what_counted_and_what_was_dropped() {
        var longest = new TrimmedMean(4, 0, 2, Better.LONGER, RoundingBySize.AVERAGES);
        assertEquals(
                "Mean of 1:30.00, 1:20.00; dropped: 1:00.00, 1 without a time: 1:25.00",
                longest.of(List.of(time("60"), time("90"), time("DNF"), time("80")))
                        .how());
        assertTrue(longest.of(List.of(time("60"), time("-"), time("-"), time("-")))
                .how()
                .startsWith("3 of 4 tries are without a time"));
        assertThrows(IllegalArgumentException.class, () -> longest.of(List.of(time("60"))));
        assertThrows(
                IllegalArgumentException.class, () -> new TrimmedMean(2, 1, 1, Better.LONGER, RoundingBySize.AVERAGES));
        assertThrows(
                IllegalArgumentException.class, () -> new TrimmedMean(0, 0, 0, Better.LONGER, RoundingBySize.AVERAGES));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/standing/ties.csv", numLinesToSkip = 1)
    void equal_scores_are_parted_by_the_rule_and_the_place_after_a_tie_is_left_out(
            TieRule ties, Better better, String entries, String order, String source) {
        List<Standings.Scored> scored = new ArrayList<>();
        for (String entry : entries.split(";")) {
            String[] nameAndTimes = entry.strip().split(":", -1);
            String[] nameAndScore = nameAndTimes[0].split(" ");
            scored.add(0, new Standings.Scored(nameAndScore[0], time(nameAndScore[1]), times(nameAndTimes[1])));
        }
        assertEquals(
                order,
                Standings.order(scored, ties, better).stream()
                        .map(p -> p.entry() + p.place())
                        .collect(Collectors.joining(" ")),
                source);
    }
}
