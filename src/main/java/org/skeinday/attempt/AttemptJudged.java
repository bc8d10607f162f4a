package org.skeinday.attempt;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.judged}: whether the flight may enter averages, fits and forecasts.
 *
 * @param reason why not, empty when it may
 * @param contactMs from release to the contact, null when there was none or nobody saw when
 */
public record AttemptJudged(
        String attemptId, String reason, @Nullable Long contactMs) {
    public AttemptJudged {
        validity(reason, contactMs); // refuses what is none
    }

    public Validity validity() {
        return validity(reason, contactMs);
    }

    private static Validity validity(String reason, @Nullable Long contactMs) {
        return new Validity(reason, contactMs == null ? null : Duration.ofMillis(contactMs));
    }
}
