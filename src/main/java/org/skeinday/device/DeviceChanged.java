package org.skeinday.device;

import org.jspecify.annotations.Nullable;

/**
 * Somebody else uses a device, or for something else. It stays the same device, so that a watch it took stays its own.
 *
 * @param tokenHash of the token that it is given now
 * @param earlierHash of the token with which it asked: an answer that is lost must not shut it out; null for none
 * @param earlierRole what that token may still do: never more than before, nor than now
 * @param asked the role that it asks the coach for; null for none
 */
public record DeviceChanged(
        String device,
        String tokenHash,
        String person,
        String role,
        long atMs,
        @Nullable String earlierHash,
        @Nullable String earlierRole,
        @Nullable String asked) {
    public DeviceChanged {
        TokenHash.check(tokenHash);
        if (earlierHash != null) {
            TokenHash.check(earlierHash);
        }
        if ((earlierHash == null) != (earlierRole == null)) {
            throw new IllegalArgumentException(
                    "An earlier token and its role must stand together, but one was missing");
        }
    }
}
