package org.skeinday.winding;

import java.util.Locale;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * The launch torque that was wanted, above 0, and the one that was reached: after the back-off, just before the motor
 * leaves the meter.
 */
public record LaunchAgainstWanted(Torque wanted, Torque reached) {
    /** Own default, in per cent: closer than this nobody reads a needle. */
    public static final double AS_WANTED_PERCENT = 2;

    public LaunchAgainstWanted {
        Preconditions.above("The launch torque wanted in N·mm", wanted.newtonMillimetres(), 0);
    }

    /** Reached above (positive) or below (negative) what was wanted, in per cent of it. */
    public double percent() {
        return 100 * (reached.newtonMillimetres() - wanted.newtonMillimetres()) / wanted.newtonMillimetres();
    }

    public String words() {
        double percent = percent();
        if (Math.abs(percent) <= AS_WANTED_PERCENT + Wind.BINARY_HAIR) {
            return "launch torque as wanted";
        }
        return String.format(
                Locale.ROOT, "launch torque %.0f %% %s", Math.abs(percent), percent > 0 ? "too high" : "too low");
    }
}
