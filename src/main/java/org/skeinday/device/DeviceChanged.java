package org.skeinday.device;

/**
 * Somebody else uses a device, or for something else. It stays the same device, so that a watch it took stays its own,
 * and keeps its token: an answer that is lost must not shut it out.
 */
public record DeviceChanged(String device, String tokenHash, String person, String role, long atMs) {}
