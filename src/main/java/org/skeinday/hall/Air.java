package org.skeinday.hall;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.Preconditions;

/**
 * How the air drifts.
 *
 * @param towardsDegrees where it goes: clockwise from the way mount to winder, 0 to below 360
 * @param metresPerSecond 0 to 5; null when only the direction was seen
 */
public record Air(double towardsDegrees, @Nullable Double metresPerSecond) {
    public Air {
        if (!(towardsDegrees >= 0 && towardsDegrees < 360)) {
            throw new IllegalArgumentException(
                    "A direction must be 0 to below 360 degrees, but was " + PlainNumber.of(towardsDegrees));
        }
        if (metresPerSecond != null) {
            Preconditions.within("A drift in m/s", metresPerSecond, 0, 5);
        }
    }

    /** As a person says it at the mount, looking at the winder: 12 is away, 3 to the right. */
    public static Air towardsOClock(int hour, @Nullable Double metresPerSecond) {
        Preconditions.within("An hour of the clock", hour, 1, 12);
        return new Air(hour % 12 * 30, metresPerSecond);
    }
}
