package org.skeinday.device;

/**
 * A device that shows the token it had before.
 *
 * @param device with the role that this token still has
 * @param currentHash of the token that it was given since
 * @param changedAtMs when, server time, epoch ms
 */
public record EarlierToken(Device device, String currentHash, long changedAtMs) {}
