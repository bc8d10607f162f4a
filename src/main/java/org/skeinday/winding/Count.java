package org.skeinday.winding;

import org.skeinday.units.Preconditions;

/**
 * Crank turns in the motor at one moment of a wind.
 *
 * @param crankTurns between two counts a straight line over time, so rarely whole
 * @param estimated no count was entered yet: from the plan and the time at full stretch
 */
public record Count(double crankTurns, boolean estimated) {
    public Count {
        Preconditions.within("Crank turns", crankTurns, 0, 1_000_000);
    }
}
