package org.skeinday.winding.store;

import java.util.EnumMap;
import java.util.Map;
import org.skeinday.evidence.Measured;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;

/** The counts of a wind, each as what was measured. */
public final class CountedTurns {
    private CountedTurns() {}

    /** In crank turns; without those that nobody counted. */
    public static Map<Measured, Double> of(Wind wind) {
        Map<Measured, Double> turns = new EnumMap<>(Measured.class);
        WindCounted counted = wind.counted();
        if (counted != null) {
            turns.put(Measured.CRANK_TURNS, (double) counted.stopCrankTurns());
            Double backOff = counted.backOffCrankTurns();
            Integer atFull = counted.atFullCrankTurns();
            if (backOff != null) {
                turns.put(Measured.BACK_OFF, backOff);
            }
            if (atFull != null) {
                turns.put(Measured.AT_FULL, atFull.doubleValue());
            }
        }
        return turns;
    }
}
