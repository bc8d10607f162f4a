package org.skeinday.device;

import org.jspecify.annotations.Nullable;

/**
 * A device was let in.
 *
 * @param tokenHash SHA-256 of the cookie's token, 64 hexadecimal digits
 * @param person id of the person, empty when nobody was chosen
 * @param role {@code viewer} to {@code coach}
 * @param atMs server time, epoch ms
 * @param joiningHash of the number that the device made for this joining; null where it made none
 * @param asked the role that it asks the coach for; null for none
 */
public record DeviceJoined(
        String device,
        String tokenHash,
        String person,
        String role,
        long atMs,
        @Nullable String joiningHash,
        @Nullable String asked) {
    public DeviceJoined {
        TokenHash.check(tokenHash);
        if (joiningHash != null) {
            TokenHash.check(joiningHash);
        }
    }
}
