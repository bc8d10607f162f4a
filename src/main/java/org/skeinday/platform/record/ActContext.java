package org.skeinday.platform.record;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * What a rule may know beside the content: who, and the server's time. New ids derive from the act's own id.
 *
 * @param zone of the laptop, for its calendar day
 */
public record ActContext(String actId, Instant now, ZoneId zone, String device, String person) {
    /** The laptop's calendar day. */
    public LocalDate today() {
        return LocalDate.ofInstant(now, zone);
    }

    /** As facts keep it: null when nobody said who holds the device. */
    public @Nullable String personOrNull() {
        return person.isEmpty() ? null : person;
    }

    public String newId(int k) {
        return actId + "-" + k;
    }
}
