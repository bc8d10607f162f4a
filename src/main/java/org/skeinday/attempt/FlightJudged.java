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
 * @param contacts how many were known when it was said, as {@link Contacts#known} counts them; null in records of before,
 *     whose words decide of all
 */
public record FlightJudged(
        String attemptId,
        @Nullable String reason,
        @Nullable Long contactMs,
        @Nullable Boolean ofContact,
        @Nullable Integer contacts) {
    public FlightJudged {
        if (reason != null && reason.isBlank()) {
            throw new IllegalArgumentException("A flight that is left out must have a reason, but had none");
        }
        if (contactMs != null && (contactMs < 0 || reason == null)) {
            throw new IllegalArgumentException("A contact must have a reason and a time of 0 or more, but was '"
                    + (reason == null ? "" : reason) + "' at " + contactMs + " ms");
        }
    }

    /** Where so many contacts were known. */
    public static FlightJudged knowing(
            int contacts, String attemptId, @Nullable String reason, @Nullable Long contactMs) {
        return new FlightJudged(attemptId, reason, contactMs, contacts > 0, contacts);
    }

    /**
     * Whether it decides of a flight that touched something: what was told of it later, nobody has decided of.
     *
     * @param now how many contacts are known by now, as {@link Contacts#known} counts them
     */
    public boolean decidesOfContact(int now) {
        return reason != null || Boolean.TRUE.equals(ofContact) && (contacts == null || now <= contacts);
    }

    /** The same as files have it, which know no moments of contacts: whether it decides of so many as are known now. */
    public FlightJudged asOf(int now) {
        return decidesOfContact(now) ? this : new FlightJudged(attemptId, reason, contactMs, false, null);
    }

    /** From release to the contact; null when there was none or nobody saw when. */
    public @Nullable Duration contact() {
        return contactMs == null ? null : Duration.ofMillis(contactMs);
    }
}
