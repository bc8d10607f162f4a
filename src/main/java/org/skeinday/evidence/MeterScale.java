package org.skeinday.evidence;

/** Where the scale of a torque meter ends. @param fullNmm above 0 @param words with its unit, as it was typed */
public record MeterScale(double fullNmm, String words) {}
