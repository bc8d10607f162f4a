package org.skeinday.winding;

import java.util.List;
import java.util.Optional;
import org.skeinday.motor.Hold;
import org.skeinday.motor.HoldBleed;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/** How long a wound motor may wait, in words for the hold clock. */
public final class HoldWords {
    private HoldWords() {}

    /**
     * From the last reading that is later than the settling after the last turn.
     *
     * @param wanted at launch
     * @param readings of this hold
     * @param holdAtMostSeconds while the bleed is not known, above 0
     */
    public static String of(
            HoldBleed bleed, Optional<Torque> wanted, List<Hold.Reading> readings, double holdAtMostSeconds) {
        Preconditions.above("The longest hold in seconds", holdAtMostSeconds, 0);
        if (!bleed.isKnown()) {
            return "bleed not known, " + atMost(holdAtMostSeconds);
        }
        Optional<Hold.Reading> last = readings.stream()
                .filter(r -> r.seconds() > Hold.SETTLING_SECONDS && r.torque().newtonMillimetres() > 0)
                .reduce((a, b) -> b.seconds() >= a.seconds() ? b : a);
        if (wanted.isEmpty() || last.isEmpty()) {
            return (wanted.isEmpty() ? "no launch torque wanted, " : "no reading yet, ") + atMost(holdAtMostSeconds);
        }
        return words(bleed, wanted.get(), last.get(), holdAtMostSeconds);
    }

    private static String words(HoldBleed bleed, Torque wanted, Hold.Reading last, double holdAtMostSeconds) {
        if (wanted.compareTo(last.torque()) >= 0) {
            return "torque is down to what is wanted: release now";
        }
        HoldBleed.Release release = bleed.latestRelease(wanted, last.torque(), last.seconds(), holdAtMostSeconds);
        double seconds = release instanceof HoldBleed.Release.Latest latest ? latest.seconds() : holdAtMostSeconds;
        return seconds > WindMark.MOST_ELAPSED_MS / 1000.0
                ? "torque stays above what is wanted"
                : "torque is down to what is wanted " + (long) Math.floor(seconds) + " s after the last turn";
    }

    private static String atMost(double seconds) {
        return "hold at most " + Math.round(seconds) + " s";
    }
}
