package org.skeinday.attempt;

import org.skeinday.units.FlightTime;

/**
 * What a flight used: turns used = (wound − back-off − remaining crank turns) · R; speed is hook against frame.
 *
 * @param crankTurns wound, zero or more
 * @param backOff and {@code remaining}: halves possible; counted before launch and after landing
 * @param ratio motor turns per crank turn, above zero
 * @param time more than zero
 */
public record FlightFigures(double crankTurns, double backOff, double remaining, double ratio, FlightTime time) {
    public FlightFigures {
        if (crankTurns < 0 || backOff < 0 || remaining < 0 || ratio <= 0) {
            throw new IllegalArgumentException("Crank turns must be zero or more and the ratio above zero, but were "
                    + crankTurns + ", " + backOff + ", " + remaining + " at " + ratio);
        }
        if (crankTurns - backOff - remaining < 0) {
            throw new IllegalArgumentException("Back-off and remainder must not exceed the turns wound, but were "
                    + backOff + " and " + remaining + " of " + crankTurns);
        }
        if (time.millis() == 0) {
            throw new IllegalArgumentException("The flight's time must be more than zero, but was 0 ms");
        }
    }

    public double motorTurnsAtLaunch() {
        return (crankTurns - backOff) * ratio;
    }

    public double motorTurnsRemaining() {
        return remaining * ratio;
    }

    public double motorTurnsUsed() {
        return motorTurnsAtLaunch() - motorTurnsRemaining();
    }

    public double turnsPerSecond() {
        return motorTurnsUsed() * 1000.0 / time.millis();
    }

    public double turnsPerMinute() {
        return turnsPerSecond() * 60;
    }

    /** Of the turns at launch, 0 to 1; zero when there were none. */
    public double shareRemaining() {
        return motorTurnsAtLaunch() == 0 ? 0 : motorTurnsRemaining() / motorTurnsAtLaunch();
    }
}
