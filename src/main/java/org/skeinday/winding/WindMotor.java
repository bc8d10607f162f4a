package org.skeinday.winding;

/** Fact {@code wind.motor}: what was wound was this motor, and not the one that the record had. What was planned stays. */
public record WindMotor(String windId, String motorId) {}
