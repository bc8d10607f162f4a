package org.skeinday.attempt;

import org.skeinday.units.Preconditions;

/**
 * Fact {@code flight.later-uses}: of the uses of its motor that no row tells ({@link org.skeinday.motor.MotorAdded#uses}), so
 * many came after this flight. Kept as a difference and not as the number that the file had, so that the number follows when
 * a flight before it is corrected.
 *
 * @param flightId of an attempt or a practice flight
 * @param motorId of the motor that the file had for it; of another it says nothing
 * @param uses below 0 where the file tells of more uses before it than of its motor
 */
public record LaterUses(String flightId, String motorId, int uses) {
    public LaterUses {
        Preconditions.filled("The flight", flightId);
        Preconditions.filled("The motor", motorId);
    }
}
