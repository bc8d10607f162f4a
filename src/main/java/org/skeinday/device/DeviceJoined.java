package org.skeinday.device;

/**
 * A device was let in.
 *
 * @param tokenHash SHA-256 of the cookie's token, 64 hexadecimal digits
 * @param person id of the person, empty when nobody was chosen
 * @param role {@code viewer} to {@code coach}
 * @param atMs server time, epoch ms
 */
public record DeviceJoined(String device, String tokenHash, String person, String role, long atMs) {
    public DeviceJoined {
        if (!tokenHash.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException(
                    "A token's hash is 64 hexadecimal digits, but was " + tokenHash.length() + " characters");
        }
    }
}
