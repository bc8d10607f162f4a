package org.skeinday.attempt;

import org.skeinday.units.FlightTime;
import org.skeinday.units.Preconditions;

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
        Preconditions.zeroOrMore("Crank turns", crankTurns);
        Preconditions.zeroOrMore("The back-off in crank turns", backOff);
        Preconditions.zeroOrMore("The remainder in crank turns", remaining);
        Preconditions.positive("The ratio", ratio);
        if (crankTurns - backOff - remaining < 0) {
            throw new IllegalArgumentException("Back-off and remainder must not exceed the turns wound, but were "
                    + backOff + " and " + remaining + " of " + crankTurns);
        }
        Preconditions.above("The flight's time", time.millis(), 0, "ms");
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
