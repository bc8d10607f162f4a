package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.FlightRules.IfShort;
import org.skeinday.contest.ScoreKind;
import org.skeinday.standing.FlightsRule;
import org.skeinday.standing.ScoreRule;
import org.skeinday.standing.Scoring;
import org.skeinday.standing.TieRule;

/** Three attempts by the rules, 20 s at least, one repeat of each. */
class AttemptCountTest {
    private static final Scoring THREE = scoring(1);

    private final List<AttemptCount.Tried> own = new ArrayList<>();

    private static Scoring scoring(int repeats) {
        return new Scoring(
                new FlightsRule(3, 20_000, repeats, 500, IfShort.NO_TIME),
                new ScoreRule(ScoreKind.BEST, 1),
                Optional.empty(),
                FlightRules.MeanRanks.EXACT,
                TieRule.SHARED);
    }

    private AttemptCountTest then(State state, @Nullable Long officialMs, boolean again) {
        int running = own.size() + 1;
        own.add(new AttemptCount.Tried("a" + running, running, state, officialMs, "why", again, null));
        return this;
    }

    private AttemptCountTest flown(long ms) {
        return then(State.CLOSED, ms, false);
    }

    private AttemptCountTest abandoned() {
        return then(State.SCRUBBED, null, false);
    }

    private AttemptCount count() {
        return AttemptCount.of(own, THREE, true);
    }

    private List<String> words() {
        AttemptCount count = count();
        return own.stream().map(a -> count.of(a.id()).words()).toList();
    }

    @Test
    void what_is_flown_is_counted_one_after_the_other() {
        flown(60_000).flown(61_000).flown(62_000);
        assertEquals(List.of("attempt 1", "attempt 2", "attempt 3"), words());
    }

    @Test
    void an_abandoned_attempt_keeps_its_number_for_the_next_try() {
        flown(60_000).abandoned().abandoned();
        assertEquals(List.of("attempt 1", "attempt 2", "attempt 2, 2nd try"), words());
        assertEquals(new AttemptNumber(4, 2, 3), count().next());
        flown(61_000);
        assertEquals("attempt 3", count().next().words());
    }

    @Test
    void what_is_flown_again_and_a_short_flight_that_may_be_repeated_keep_it_as_well() {
        then(State.VOID, null, true).flown(60_000).flown(5_000).flown(61_000);
        assertEquals(List.of("attempt 1", "attempt 1, 2nd try", "attempt 2", "attempt 2, 2nd try"), words());
    }

    @Test
    void what_is_void_and_a_short_flight_without_a_repeat_left_use_theirs_up() {
        then(State.VOID, null, false).flown(5_000).flown(6_000);
        assertEquals(List.of("attempt 1", "attempt 2", "attempt 2, 2nd try"), words());
        assertEquals("attempt 3", count().next().words());
    }

    @Test
    void what_is_not_decided_counts_until_it_is_abandoned() {
        flown(60_000).then(State.WINDING, null, false);
        assertEquals("attempt 3", count().next().words());
        own.remove(1);
        abandoned();
        assertEquals("attempt 2, 2nd try", count().next().words());
    }

    @Test
    void opened_again_it_keeps_its_number() {
        flown(60_000).flown(61_000);
        own.set(0, new AttemptCount.Tried("a1", 1, State.LANDED, 60_000L, null, false, null));
        assertEquals(List.of("attempt 1", "attempt 2"), words());
    }

    @Test
    void at_practice_there_is_no_limit() {
        for (int i = 0; i < 5; i++) {
            flown(60_000);
        }
        assertEquals("attempt 6", AttemptCount.of(own, THREE, false).next().words());
        assertEquals("attempt 3, 4th try", count().next().words());
    }

    @Test
    void a_number_above_the_running_one_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new AttemptNumber(2, 3, 1));
        assertThrows(IllegalArgumentException.class, () -> new AttemptNumber(2, 1, 0));
    }

    @ParameterizedTest
    @MethodSource("org.skeinday.Seeds#several")
    void whatever_happens_no_number_is_above_the_rules_and_no_try_is_named_twice(long seed) {
        var random = new SplittableRandom(seed);
        for (int i = 0; i < 12; i++) {
            switch (random.nextInt(5)) {
                case 0 -> abandoned();
                case 1 -> then(State.VOID, null, random.nextBoolean());
                case 2 -> flown(5_000);
                case 3 -> then(State.LANDED, null, false);
                default -> flown(60_000);
            }
            List<String> words = words();
            assertEquals(words.size(), words.stream().distinct().count(), "seed " + seed + ": " + words);
            AttemptCount count = count();
            assertTrue(
                    own.stream().allMatch(a -> count.of(a.id()).rule() <= 3)
                            && count.next().rule() <= 3,
                    "seed " + seed + ": " + words);
        }
    }
}
