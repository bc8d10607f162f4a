package org.skeinday.timing;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Preconditions;

/**
 * A part of the building on which the model no longer moves along.
 *
 * @param where for example {@code beam}; may be empty
 * @param fromMs when it ceased to move along, ms after release, zero or more
 * @param freedMs when it flew on, ms after release; null when nobody saw it freed
 */
public record Contact(String where, long fromMs, @Nullable Long freedMs) {
    public Contact {
        Preconditions.zeroOrMore("A contact after release", fromMs, "ms");
        if (freedMs != null && freedMs < fromMs) {
            throw new IllegalArgumentException(
                    "A model must be freed after it was held at " + fromMs + " ms, but was at " + freedMs + " ms");
        }
    }

    String words() {
        return "caught" + (where.isBlank() ? "" : " by the " + where) + " at " + new FlightTime(fromMs).text(2);
    }
}
