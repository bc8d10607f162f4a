package org.skeinday.device;

/**
 * A device that has joined and not been ended.
 *
 * @param joinedAtMs server time, epoch ms
 * @param asked the role that it asks for and the coach has not answered yet; empty for none
 * @param allowed the role that the coach has said yes to and it has not taken yet; empty for none
 */
public record Device(String id, String person, String role, long joinedAtMs, String asked, String allowed) {}
