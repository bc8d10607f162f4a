package org.skeinday.review;

import org.jspecify.annotations.Nullable;

/**
 * What was flown, where and by whom; null where the record does not say.
 *
 * @param winder the person who wound
 */
public record FlightContext(
        @Nullable Named event,
        @Nullable Named entry,
        @Nullable Named model,
        @Nullable Named motor,
        @Nullable Named batch,
        @Nullable Named winder) {
    /** Nothing of it is known. */
    public static final FlightContext UNKNOWN = new FlightContext(null, null, null, null, null, null);
}
