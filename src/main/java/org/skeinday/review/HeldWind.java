package org.skeinday.review;

import org.skeinday.motor.Hold;

/** A hold that was read long enough, of a motor of this batch. @param id of the flight, else of the wind */
public record HeldWind(String id, Named batch, Hold hold) {}
