package org.skeinday.review;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * The air of the hall during a flight; null where nobody measured.
 *
 * @param celsius temperature, −20 to 60 °C
 * @param humidity relative, 0 to 100 %
 * @param drift which way the model was carried, in words
 */
public record Conditions(
        @Nullable Double celsius,
        @Nullable Double humidity,
        @Nullable String drift) {
    public static final Conditions UNKNOWN = new Conditions(null, null, null);

    public Conditions {
        Preconditions.withinIfKnown("The temperature in °C", celsius, -20, 60);
        Preconditions.withinIfKnown("The humidity in %", humidity, 0, 100);
    }
}
