package org.skeinday.device;

/**
 * Somebody else uses a device, or for something else. It stays the same device, so that a watch it took stays its own,
 * but gets a new token: the old one is worth nothing.
 */
public record DeviceChanged(String device, String tokenHash, String person, String role, long atMs) {}
