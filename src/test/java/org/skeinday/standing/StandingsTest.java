package org.skeinday.standing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.skeinday.contest.ScoreKind;

class StandingsTest {
    private static String order(ScoreRule rule, Map<String, List<Long>> times) {
        return Standings.order(times, rule, TieRule.NEXT_BEST).stream()
                .map(p -> p.entry() + p.place())
                .collect(Collectors.joining(" "));
    }

    @Test
    void a_tie_is_broken_by_the_best_then_the_next_and_then_shares_a_place() {
        Map<String, List<Long>> times = new LinkedHashMap<>();
        times.put("none", List.of());
        times.put("a", List.of(50L, 50L, 10L));
        times.put("b", List.of(40L, 60L));
        times.put("c", List.of(50L, 50L, 20L));
        times.put("d", List.of(10L, 50L, 50L));
        times.put("e", List.of(1L));
        assertEquals("b1 c2 a3 d3 e5 none0", order(new ScoreRule(ScoreKind.SUM, 2), times));
        assertEquals("b1 c2 a3 d3 e5 none0", order(new ScoreRule(ScoreKind.BEST, 1), times));
    }

    @Test
    void the_best_two_of_three_are_added() {
        assertEquals(Optional.of(190L), new ScoreRule(ScoreKind.SUM, 2).countedMs(List.of(90L, 100L, 80L)));
        assertEquals(Optional.of(100L), new ScoreRule(ScoreKind.BEST, 2).countedMs(List.of(90L, 100L, 80L)));
        assertEquals(Optional.empty(), new ScoreRule(ScoreKind.SUM, 2).countedMs(List.of()));
    }

    @Test
    void a_mean_is_over_the_attempts_that_count_flown_or_not() {
        ScoreRule mean = new ScoreRule(ScoreKind.MEAN, 3);
        assertEquals(Optional.of(100L), mean.countedMs(List.of(60L, 40L)));
        assertEquals(3, mean.divisor());
    }

    @Test
    void at_least_one_attempt_counts() {
        assertThrows(IllegalArgumentException.class, () -> new ScoreRule(ScoreKind.SUM, 0));
    }
}
