package org.skeinday.winding;

import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * What marks and keys tell of the turns of a wind before anybody counts them: a suggestion, never a count.
 *
 * @param atFull crank turns at full stretch; null where nothing tells
 * @param stop crank turns at the last turn; null where nothing tells: the planned ones only where a key
 *     told the last turn and the pace comes to them
 * @param early why the planned turns were not reached, in words; empty where nothing says so
 */
public record ToldTurns(@Nullable Integer atFull, @Nullable Integer stop, String early) {
    /** By the pace a wind counts as ended early below this share of its target: the pace is no better (own default). */
    static final double NEARLY_ALL = 0.95;

    public static ToldTurns of(Wind wind) {
        @Nullable Integer target = wind.begun().targetCrankTurns();
        Optional<Integer> paced = byPace(wind);
        String early = early(wind, target, paced);
        boolean walked = wind.times().steppedIn() != null;
        if (early.isEmpty() && (!lastTurnTapped(wind) || paced.isEmpty())) {
            return new ToldTurns(null, null, ""); // nothing tells that it went as planned
        }
        return early.isEmpty()
                ? new ToldTurns(wind.begun().atFullCrankTurns(), target, "")
                : new ToldTurns(walked ? wind.begun().atFullCrankTurns() : null, paced.orElse(null), early);
    }

    /** By a key: what the needle tells of the end says nothing of turns that came after its last mark. */
    private static boolean lastTurnTapped(Wind wind) {
        return WindTimes.said(wind.phases()).stopped() != null;
    }

    public boolean isEarly() {
        return !early.isEmpty();
    }

    /** By the time at full stretch and the moment of the last turn, whole; empty where one of the two is not known. */
    private static Optional<Integer> byPace(Wind wind) {
        @Nullable Long stopped = wind.times().stopped();
        return stopped == null
                ? Optional.empty()
                : wind.turns().at(stopped).map(count -> (int) Math.round(count.crankTurns()));
    }

    private static String early(Wind wind, @Nullable Integer target, Optional<Integer> paced) {
        OptionalInt limit = wind.ceilingLevel();
        OptionalInt peak = wind.peakLevel();
        if (limit.isPresent() && peak.isPresent() && peak.getAsInt() >= limit.getAsInt()) {
            return "The needle reached the torque limit";
        }
        if (target == null) {
            return "";
        }
        @Nullable Integer atFull = wind.begun().atFullCrankTurns();
        if (wind.times().steppedIn() == null && atFull != null && atFull < target) {
            return "Nobody walked in";
        }
        return paced.filter(turns -> turns < NEARLY_ALL * target)
                .map(turns -> "By the pace it ended before the turns limit of " + target)
                .orElse("");
    }
}
