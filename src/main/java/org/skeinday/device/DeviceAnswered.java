package org.skeinday.device;

/**
 * The coach has said yes or no to what a device asks to be. It is no more than before until it comes for it, and then gets
 * another token.
 *
 * @param role what it may become; empty after a no
 * @param atMs server time, epoch ms
 */
public record DeviceAnswered(String device, String role, long atMs) {}
