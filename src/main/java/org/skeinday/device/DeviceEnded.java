package org.skeinday.device;

/** A device may do nothing any more. @param atMs server time, epoch ms */
public record DeviceEnded(String device, long atMs) {}
