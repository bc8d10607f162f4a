package org.skeinday.platform.record;

import java.time.Instant;

/** What a rule may know beside the content: who, and the server's time. New ids derive from the act's own id. */
public record ActContext(String actId, Instant now, String device, String person) {
    public String newId(int k) {
        return actId + "-" + k;
    }
}
