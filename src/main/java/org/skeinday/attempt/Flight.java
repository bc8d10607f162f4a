package org.skeinday.attempt;

import java.util.Optional;
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
        return new Flight(
                id,
                isAttempt,
                modelId,
                motorId,
                atMs,
                ratio,
                stopCrankTurns,
                backOffCrankTurns,
                remainingCrankTurns,
                peakTorqueNmm,
                launchTorqueNmm,
                timeMs,
                worth);
    }

    /** The same with another number. @param number in the record's own unit, null where it is not known */
    public Flight with(Measured what, @Nullable Double number) {
        return new Flight(
                id,
                isAttempt,
                modelId,
                motorId,
                atMs,
                ratio,
                what == Measured.CRANK_TURNS ? number : stopCrankTurns,
                what == Measured.BACK_OFF ? number : backOffCrankTurns,
                what == Measured.REMAINING ? number : remainingCrankTurns,
                what == Measured.PEAK_TORQUE ? number : peakTorqueNmm,
                what == Measured.LAUNCH_TORQUE ? number : launchTorqueNmm,
                what == Measured.TIME && number != null ? (Long) Math.round(number) : timeMs,
                said);
    }

    /** One of its numbers in the record's own unit; null where it is not known. */
    public @Nullable Double number(Measured what) {
        return switch (what) {
            case FLIGHT -> null;
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
        return counts().isYes()
                ? Optional.of(new Flight(
                        id,
                        isAttempt,
                        modelId,
                        motorId,
                        atMs,
                        ratio,
                        counted(Measured.CRANK_TURNS, stopCrankTurns),
                        counted(Measured.BACK_OFF, backOffCrankTurns),
                        counted(Measured.REMAINING, remainingCrankTurns),
                        counted(Measured.PEAK_TORQUE, peakTorqueNmm),
                        counted(Measured.LAUNCH_TORQUE, launchTorqueNmm),
                        counted(Measured.TIME, timeMs),
                        said))
                : Optional.empty();
    }

    private <T extends Number> @Nullable T counted(Measured what, @Nullable T value) {
        return value != null && said.counts(what, value.doubleValue()).isYes() ? value : null;
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
