package org.skeinday.attempt;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.FlightRules;
import org.skeinday.standing.CollisionChoice;
import org.skeinday.standing.CollisionRule;
import org.skeinday.units.EnumWords;

/**
 * Fact {@code attempt.collided}: the entry was told that it may keep its time or fly again, and what it chose.
 *
 * @param choice keep or again, null as long as it has said nothing
 * @param chosenAtMs when it said so, epoch ms
 */
public record Collision(
        String attemptId,
        long toldAtMs,
        @Nullable String choice,
        @Nullable Long chosenAtMs) {

    /** Where the choice stands. */
    public CollisionChoice at(long nowMs, FlightRules rules) {
        var rule = new CollisionRule(rules.collisionMs(), ifSilent(rules));
        CollisionChoice.@Nullable Said said =
                choice == null || chosenAtMs == null ? null : new CollisionChoice.Said(chosen(choice), chosenAtMs);
        return CollisionChoice.at(nowMs, toldAtMs, said, rule);
    }

    private static CollisionRule.Choice ifSilent(FlightRules rules) {
        return switch (rules.ifSilentRule()) {
            case KEEP -> CollisionRule.Choice.KEEP;
            case AGAIN -> CollisionRule.Choice.AGAIN;
        };
    }

    private static CollisionRule.Choice chosen(String word) {
        return EnumWords.parse("What an entry chooses", CollisionRule.Choice.class, word);
    }

    /** What holds; empty as long as it may still choose. */
    public Optional<CollisionRule.Choice> holds(long nowMs, FlightRules rules) {
        CollisionChoice now = at(nowMs, rules);
        if (now instanceof CollisionChoice.Made made) {
            return Optional.of(made.choice());
        }
        return now instanceof CollisionChoice.Lapsed lapsed ? Optional.of(lapsed.holds()) : Optional.empty();
    }
}
