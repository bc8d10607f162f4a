package org.skeinday.device.web;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.device.Device;

/**
 * Which device holds a token: each request asks, so the record is asked once for each token and again only after some
 * device has joined, changed or ended. What nobody holds is not kept: guesses must not fill the memory.
 */
public final class KnownTokens {
    private final Function<String, Optional<Device>> inRecord;
    private volatile Map<String, Device> known = new ConcurrentHashMap<>();

    public KnownTokens(Function<String, Optional<Device>> inRecord) {
        this.inRecord = inRecord;
    }

    /** The device that holds this token, unless it was ended. */
    public Optional<Device> ofToken(String token) {
        Map<String, Device> now = known; // before the record is read: a change meanwhile leaves this one behind
        @Nullable Device kept = now.get(token);
        if (kept != null) {
            return Optional.of(kept);
        }
        Optional<Device> read = inRecord.apply(token);
        read.ifPresent(device -> now.put(token, device));
        return read;
    }

    /** It may be otherwise from now on. To be called after the commit and before anybody has the answer. */
    public void changed() {
        known = new ConcurrentHashMap<>();
    }
}
