package org.skeinday.review;

import org.jspecify.annotations.Nullable;

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
        Check.within("The temperature in °C", celsius, -20, 60);
        Check.within("The humidity in %", humidity, 0, 100);
    }
}
