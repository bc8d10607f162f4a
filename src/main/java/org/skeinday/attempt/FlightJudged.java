package org.skeinday.attempt;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.judged}: a person has said whether a flight says something of model and motor; a later one stands in
 * place of it. Its official time is not touched.
 *
 * @param reason why it is left out, null when it counts
 * @param contactMs when it touched something, in ms since the release, null when that is not known
 */
public record FlightJudged(
        String attemptId, @Nullable String reason, @Nullable Long contactMs) {
    public FlightJudged {
        if (reason != null && reason.isBlank()) {
            throw new IllegalArgumentException("A flight that is left out must have a reason, but had none");
        }
        if (contactMs != null && (contactMs < 0 || reason == null)) {
            throw new IllegalArgumentException("A contact must have a reason and a time of 0 or more, but was '"
                    + (reason == null ? "" : reason) + "' at " + contactMs + " ms");
        }
    }

    /** From release to the contact; null when there was none or nobody saw when. */
    public @Nullable Duration contact() {
        return contactMs == null ? null : Duration.ofMillis(contactMs);
    }
}
