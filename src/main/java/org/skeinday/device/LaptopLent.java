package org.skeinday.device;

/** The students hold the laptop, or its owner has it back. @param atMs server time, epoch ms */
public record LaptopLent(boolean lent, long atMs) {}
