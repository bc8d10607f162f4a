package org.skeinday.motor;

import org.jspecify.annotations.Nullable;

/** Fact {@code motor.placed}: where a person has put a motor in the order of the Bench; null to go by need again. */
public record MotorPlaced(String motorId, @Nullable Long place) {}
