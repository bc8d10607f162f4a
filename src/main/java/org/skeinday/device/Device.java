package org.skeinday.device;

/** A device that has joined and not been ended. @param joinedAtMs server time, epoch ms */
public record Device(String id, String person, String role, long joinedAtMs) {}
