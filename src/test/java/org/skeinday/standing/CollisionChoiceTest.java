package org.skeinday.standing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.standing.CollisionRule.Choice;

class CollisionChoiceTest {
    private static final long TOLD = 5_000;

    private static CollisionChoice at(long now, @Nullable Choice choice, @Nullable Long saidAt, CollisionRule rule) {
        var said = choice == null || saidAt == null ? null : new CollisionChoice.Said(choice, saidAt);
        return CollisionChoice.at(now, TOLD, said, rule);
    }

    @ParameterizedTest
    @CsvSource({
        "5000, , , Open, Keep the time or fly again: 60 s left; then the entry keeps its time",
        "65000, , , Open, Keep the time or fly again: 0 s left; then the entry keeps its time",
        "65001, , , Lapsed, Nothing was chosen within 60 s: the entry keeps its time",
        "5000, AGAIN, 5000, Made, The entry flies again: chosen 0 s after it was told",
        "99000, AGAIN, 65000, Made, The entry flies again: chosen 60 s after it was told",
        "99000, KEEP, 6500, Made, The entry keeps its time: chosen 1.5 s after it was told",
        "99000, AGAIN, 65001, Lapsed, Chosen 0.001 s too late: the entry keeps its time",
    })
    void a_choice_counts_up_to_the_limit_and_then_the_time_is_kept(
            long now, @Nullable Choice choice, @Nullable Long saidAt, String state, String words) {
        CollisionChoice stands = at(now, choice, saidAt, CollisionRule.ONE_MINUTE);
        assertEquals(state, stands.getClass().getSimpleName());
        assertEquals(words, stands.words());
    }

    @Test
    void limit_and_what_holds_in_silence_are_settings() {
        var again = new CollisionRule(10_000, Choice.AGAIN);
        assertEquals(
                new CollisionChoice.Lapsed(Choice.AGAIN, "Nothing was chosen within 10 s: the entry flies again"),
                at(15_001, null, null, again));
        assertEquals(
                new CollisionChoice.Open(15_000, "Keep the time or fly again: 1 s left; then the entry flies again"),
                at(14_000, null, null, again));
    }

    @Test
    void a_choice_before_it_was_offered_and_a_limit_of_nothing_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> at(9_000, Choice.KEEP, 4_999L, CollisionRule.ONE_MINUTE));
        assertThrows(IllegalArgumentException.class, () -> new CollisionRule(0, Choice.KEEP));
    }
}
