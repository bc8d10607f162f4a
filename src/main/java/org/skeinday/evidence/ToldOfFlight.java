package org.skeinday.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.FlightTime;
import org.skeinday.units.PlainNumber;

/**
 * The numbers that were told of one flight, however they came; null where nobody told one. The list of what is doubtful
 * about them is made here and nowhere else.
 *
 * @param ratio motor turns per crank turn, above 0
 * @param scale of the torque meter, null while not known
 * @param breakingTurns motor turns at which such a motor breaks, null while not known
 */
public record ToldOfFlight(
        @Nullable Double crankTurns,
        @Nullable Double backOff,
        @Nullable Double remaining,
        double ratio,
        @Nullable Double peakNmm,
        @Nullable Double launchNmm,
        @Nullable MeterScale scale,
        @Nullable Long timeMs,
        @Nullable Double breakingTurns,
        Usual usual) {
    /** In the order of the form, at most one of a kind. */
    public List<Doubted> doubts() {
        List<Doubted> doubts = new ArrayList<>();
        beyondBreaking(doubts);
        turns(doubts);
        torques(doubts);
        time(doubts);
        return List.copyOf(doubts);
    }

    private void beyondBreaking(List<Doubted> doubts) {
        if (crankTurns != null) {
            Possible.turns(PlainNumber.of(crankTurns) + " crank turns are ", crankTurns * ratio, breakingTurns)
                    .ifPresent(doubts::add);
        }
    }

    private void turns(List<Doubted> doubts) {
        if (crankTurns == null) {
            return;
        }
        double off = backOff == null ? 0 : backOff;
        if (off > crankTurns) {
            doubts.add(new Doubted(
                    Unlikely.MORE_OFF_THAN_WOUND,
                    "More was taken off than was wound: " + PlainNumber.of(off) + " of " + PlainNumber.of(crankTurns)
                            + " crank turns. Correct one of the two"));
        } else if (remaining != null && remaining > crankTurns - off) {
            doubts.add(new Doubted(
                    Unlikely.MORE_LEFT_THAN_WOUND,
                    "More turns are left than it was launched with: " + PlainNumber.of(remaining) + " of "
                            + PlainNumber.of(crankTurns - off) + " crank turns. Correct one of the two"));
        }
    }

    private void torques(List<Doubted> doubts) {
        if (peakNmm != null && launchNmm != null && launchNmm > peakNmm * Possible.HAIR) {
            doubts.add(new Doubted(
                    Unlikely.LAUNCH_ABOVE_PEAK,
                    "The launch torque is read after the back-off: it is not above the highest torque"));
        }
        Possible.offMeter(Unlikely.PEAK_OFF_THE_METER, peakNmm, scale).ifPresent(doubts::add);
        Possible.offMeter(Unlikely.LAUNCH_OFF_THE_METER, launchNmm, scale).ifPresent(doubts::add);
    }

    private void time(List<Doubted> doubts) {
        if (timeMs == null) {
            return;
        }
        Double seconds = usual.seconds();
        if (seconds != null && Usual.isFarFrom(seconds, timeMs / 1000.0)) {
            doubts.add(new Doubted(
                    Unlikely.UNUSUAL_TIME,
                    "Ten times " + (timeMs / 1000.0 > seconds ? "more" : "less")
                            + " than usual: this model flies about "
                            + new FlightTime(Math.round(seconds) * 1000).text(0)));
            return;
        }
        Double speed = speed();
        Double often = usual.turnsPerSecond();
        if (speed != null && often != null && Usual.isFarFrom(often, speed)) {
            doubts.add(new Doubted(
                    Unlikely.UNUSUAL_SPEED,
                    String.format(
                            Locale.ROOT,
                            "With these turns the mean speed would be %.1f turns/s, ten times %s than usual (%.1f):"
                                    + " look at the time and the turns",
                            speed,
                            speed > often ? "more" : "less",
                            often)));
        }
    }

    /** Turns per second, hook against frame; null where something of it is not known or cannot be. */
    public @Nullable Double speed() {
        if (crankTurns == null || backOff == null || remaining == null || timeMs == null || timeMs == 0) {
            return null;
        }
        double used = (crankTurns - backOff - remaining) * ratio;
        return used <= 0 ? null : (Double) (used * 1000 / timeMs);
    }
}
