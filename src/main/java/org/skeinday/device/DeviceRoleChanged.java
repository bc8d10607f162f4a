package org.skeinday.device;

/** A device was given another role, and with it a new token: the old one is worth nothing. */
public record DeviceRoleChanged(String device, String tokenHash, String role, long atMs) {}
