package org.skeinday.attempt;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.judged}: a person has said whether a flight says something of model and motor; a later one stands in
 * place of it. Its official time is not touched.
 *
 * @param reason why it is left out, null when it counts
 * @param contactMs when it touched something, in ms since the release, null when that is not known
 * @param ofContact whether a contact was known when it was said; null in records of before, where whoever noted turns
 *     alone has left the same word
 */
public record FlightJudged(
        String attemptId,
        @Nullable String reason,
        @Nullable Long contactMs,
        @Nullable Boolean ofContact) {
    public FlightJudged {
        if (reason != null && reason.isBlank()) {
            throw new IllegalArgumentException("A flight that is left out must have a reason, but had none");
        }
        if (contactMs != null && (contactMs < 0 || reason == null)) {
            throw new IllegalArgumentException("A contact must have a reason and a time of 0 or more, but was '"
                    + (reason == null ? "" : reason) + "' at " + contactMs + " ms");
        }
    }

    /** Whether it decides of a flight that touched something: what was told of it later, nobody has decided of. */
    public boolean decidesOfContact() {
        return reason != null || Boolean.TRUE.equals(ofContact);
    }

    /** From release to the contact; null when there was none or nobody saw when. */
    public @Nullable Duration contact() {
        return contactMs == null ? null : Duration.ofMillis(contactMs);
    }
}
