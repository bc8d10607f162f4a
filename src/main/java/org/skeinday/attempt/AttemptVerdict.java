package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.FlightRules.IfShort;
import org.skeinday.standing.FlightsRule;
import org.skeinday.units.EnumWords;

/**
 * Fact {@code attempt.verdict}: what was judged of a flight when it was decided, by the rules and the window of then. A rule
 * or a window that is changed later changes none of it; an attempt that is opened again is judged anew.
 *
 * @param window whether it was inside its window, in words; null without one, and for what was keyed in
 * @param caught what the rules made of a catch, in words; null where nothing caught it
 * @param collision where a choice after a collision stood, in words; null where there was none
 * @param flights official flights of each entry
 * @param minimumMs from this time on a flight was official
 * @param repeatsPerFlight how often one official flight could be tried again after a shorter one
 * @param repeatsInAll how many such repeats an entry had in all
 * @param ifShort a word of {@link FlightRules#IF_SHORT}
 */
public record AttemptVerdict(
        String attemptId,
        @Nullable String window,
        @Nullable String caught,
        @Nullable String collision,
        int flights,
        long minimumMs,
        int repeatsPerFlight,
        int repeatsInAll,
        String ifShort) {

    /** Of a flight that only the rules say something of. */
    public static AttemptVerdict of(String attempt, FlightsRule rule) {
        return new AttemptVerdict(
                attempt,
                null,
                null,
                null,
                rule.flights(),
                rule.minimumMs(),
                rule.repeatsPerFlight(),
                rule.repeatsInAll(),
                EnumWords.of(rule.ifShortAgain()));
    }

    public AttemptVerdict saying(@Nullable String ofWindow, @Nullable String ofCatch, @Nullable String ofCollision) {
        return new AttemptVerdict(
                attemptId, ofWindow, ofCatch, ofCollision, flights, minimumMs, repeatsPerFlight, repeatsInAll, ifShort);
    }

    /** The rule by which the flight counts, now as then. */
    public FlightsRule rule() {
        return new FlightsRule(
                flights,
                minimumMs,
                repeatsPerFlight,
                repeatsInAll,
                EnumWords.parse("What a second short flight is", IfShort.class, ifShort));
    }
}
