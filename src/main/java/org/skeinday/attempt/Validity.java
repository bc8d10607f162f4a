package org.skeinday.attempt;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Whether a flight may enter averages, fits and forecasts. Nothing to do with its official time.
 *
 * @param reason empty for a valid flight
 * @param contact from release to the contact, null when there was none or nobody saw when
 */
public record Validity(String reason, @Nullable Duration contact) {
    private static final Validity VALID = new Validity("", null);

    public Validity {
        if (contact != null && (contact.isNegative() || reason.isBlank())) {
            throw new IllegalArgumentException(
                    "A contact must have a reason and a time of 0 or more, but was '" + reason + "' at " + contact);
        }
    }

    public static Validity valid() {
        return VALID;
    }

    /** A flight that says nothing about model and motor, for example because it touched a beam. */
    public static Validity spoilt(String reason, @Nullable Duration contact) {
        if (reason.isBlank()) {
            throw new IllegalArgumentException("A spoilt flight must have a reason, but had none");
        }
        return new Validity(reason, contact);
    }

    public boolean isValid() {
        return reason.isBlank();
    }
}
