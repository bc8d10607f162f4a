package org.skeinday.standing;

import org.jspecify.annotations.Nullable;
import org.skeinday.standing.CollisionRule.Choice;
import org.skeinday.units.FlightTime;

/** Where the choice after a collision stands. Moments are ms of one clock. */
public sealed interface CollisionChoice {
    String words();

    /**
     * It may still choose.
     *
     * @param untilMs the last moment at which a choice counts
     */
    record Open(long untilMs, String words) implements CollisionChoice {}

    /** It chose in time. */
    record Made(Choice choice, String words) implements CollisionChoice {}

    /** The time is over without a choice, or one came too late. */
    record Lapsed(Choice holds, String words) implements CollisionChoice {}

    /**
     * What an entry said.
     *
     * @param atMs when
     */
    record Said(Choice choice, long atMs) {}

    /**
     * @param toldMs when the entry was told that it may choose
     * @param said null as long as it has said nothing; the first word counts
     */
    static CollisionChoice at(long nowMs, long toldMs, @Nullable Said said, CollisionRule rule) {
        long until = toldMs + rule.limitMs();
        if (said != null && said.atMs() < toldMs) {
            throw new IllegalArgumentException("A choice must be made after " + toldMs
                    + " ms, when it was offered, but was at " + said.atMs() + " ms");
        }
        if (said != null && said.atMs() <= until) {
            return new Made(
                    said.choice(),
                    "The entry " + said.choice().words() + ": chosen " + seconds(said.atMs() - toldMs)
                            + " after it was told");
        }
        String holds = "the entry " + rule.ifSilent().words();
        if (said != null) {
            return new Lapsed(rule.ifSilent(), "Chosen " + seconds(said.atMs() - until) + " too late: " + holds);
        }
        return nowMs <= until
                ? new Open(
                        until,
                        "Keep the time or fly again: " + seconds(Math.min(until - nowMs, rule.limitMs()))
                                + " left; then " + holds)
                : new Lapsed(rule.ifSilent(), "Nothing was chosen within " + seconds(rule.limitMs()) + ": " + holds);
    }

    private static String seconds(long ms) {
        return new FlightTime(ms).seconds(0) + " s";
    }
}
