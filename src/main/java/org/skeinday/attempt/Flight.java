package org.skeinday.attempt;

import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.MeterScale;
import org.skeinday.evidence.ToldOfFlight;
import org.skeinday.evidence.Usual;
import org.skeinday.units.FlightTime;

/**
 * One flight, official or at practice, with what was counted of its wind; null where nobody counted.
 *
 * @param id of the attempt or of the practice flight
 * @param atMs of the release, else of the call, in ms since 1970 UTC
 * @param ratio motor turns per crank turn
 * @param remainingCrankTurns left after the landing
 * @param timeMs official, else by our own watch
 * @param said what it is worth as evidence
 */
public record Flight(
        String id,
        boolean isAttempt,
        @Nullable String modelId,
        @Nullable String motorId,
        long atMs,
        double ratio,
        @Nullable Double stopCrankTurns,
        @Nullable Double backOffCrankTurns,
        @Nullable Double remainingCrankTurns,
        @Nullable Double peakTorqueNmm,
        @Nullable Double launchTorqueNmm,
        @Nullable Long timeMs,
        FlightEvidence said) {
    /** Null while stop or back-off is not known. */
    public @Nullable Double launchCrankTurns() {
        return stopCrankTurns == null || backOffCrankTurns == null ? null : stopCrankTurns - backOffCrankTurns;
    }

    /** The same with what it is worth as evidence. */
    public Flight with(FlightEvidence worth) {
        return with(this::number, worth);
    }

    /** The same with another number. @param number in the record's own unit, null where it is not known */
    public Flight with(Measured what, @Nullable Double number) {
        return with(one -> one == what ? number : number(one), said);
    }

    private Flight with(Function<Measured, @Nullable Double> number, FlightEvidence worth) {
        Double time = number.apply(Measured.TIME);
        return new Flight(
                id,
                isAttempt,
                modelId,
                motorId,
                atMs,
                ratio,
                number.apply(Measured.CRANK_TURNS),
                number.apply(Measured.BACK_OFF),
                number.apply(Measured.REMAINING),
                number.apply(Measured.PEAK_TORQUE),
                number.apply(Measured.LAUNCH_TORQUE),
                time == null ? null : (Long) Math.round(time),
                worth);
    }

    /** One of its numbers in the record's own unit; null where it is not known. */
    public @Nullable Double number(Measured what) {
        return switch (what) {
            case FLIGHT, AT_FULL -> null;
            case CRANK_TURNS -> stopCrankTurns;
            case BACK_OFF -> backOffCrankTurns;
            case REMAINING -> remainingCrankTurns;
            case PEAK_TORQUE -> peakTorqueNmm;
            case LAUNCH_TORQUE -> launchTorqueNmm;
            case TIME -> timeMs == null ? null : (Double) timeMs.doubleValue();
        };
    }

    /** What may be asked about its numbers. */
    public ToldOfFlight told(@Nullable MeterScale scale, @Nullable Double breakingTurns, Usual usual) {
        return new ToldOfFlight(
                stopCrankTurns,
                backOffCrankTurns,
                remainingCrankTurns,
                ratio,
                peakTorqueNmm,
                launchTorqueNmm,
                scale,
                timeMs,
                breakingTurns,
                usual);
    }

    /** Whether it enters averages, fits and forecasts. */
    public Counts counts() {
        return said.counts();
    }

    /**
     * What may be learned from it: the same without the numbers that are offered or doubted, empty when it does not count.
     * Every fit, forecast and finding takes its flights from here.
     */
    public Optional<Flight> evidence() {
        return counts().isYes() ? Optional.of(with(this::counted, said)) : Optional.empty();
    }

    private @Nullable Double counted(Measured what) {
        Double number = number(what);
        return number != null && said.counts(what, number).isYes() ? number : null;
    }

    /** Empty while turns or time are not known, or where they cannot be. */
    public Optional<FlightFigures> figures() {
        if (stopCrankTurns == null
                || backOffCrankTurns == null
                || remainingCrankTurns == null
                || timeMs == null
                || timeMs == 0
                || stopCrankTurns - backOffCrankTurns - remainingCrankTurns < 0) {
            return Optional.empty();
        }
        return Optional.of(new FlightFigures(
                stopCrankTurns, backOffCrankTurns, remainingCrankTurns, ratio, new FlightTime(timeMs)));
    }
}
