package org.skeinday.attempt;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.judged}: whether a flight says something of model and motor; a later one stands in place of it. Its
 * official time is not touched.
 *
 * @param reason why it says nothing, null when it is valid
 * @param contactMs when it touched something, in ms since the release, null when that is not known
 */
public record FlightJudged(
        String attemptId, @Nullable String reason, @Nullable Long contactMs) {
    public FlightJudged {
        validity(reason, contactMs); // refuses what cannot be
    }

    public Validity validity() {
        return validity(reason, contactMs);
    }

    private static Validity validity(@Nullable String reason, @Nullable Long contactMs) {
        Duration contact = contactMs == null ? null : Duration.ofMillis(contactMs);
        if (reason == null && contact == null) {
            return Validity.valid();
        }
        return reason == null ? new Validity("", contact) : Validity.spoilt(reason, contact);
    }
}
