package org.skeinday.device.web;

/**
 * What a device that has joined asks to be.
 *
 * @param role that it has
 * @param asked role that the coach has not answered yet; empty for none
 * @param allowed role that the coach has said yes to and that it may take now; empty for none
 * @param person who uses it, empty for nobody in particular
 */
public record WaitingView(String role, String asked, String allowed, String person) {}
