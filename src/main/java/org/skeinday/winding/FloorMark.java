package org.skeinday.winding;

import java.util.List;
import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;

/**
 * The mark of tape to stand at: the last of the five whose count is reached; until the first step in, the first. It is
 * where the winder should be by now, not the one to walk to.
 *
 * @param number 1 at full stretch to 5 at the finish
 * @param crankTurns on at this mark
 * @param distance hook to hook; the feet stand half a metre further
 */
public record FloorMark(int number, int crankTurns, Length distance) {
    public FloorMark {
        Preconditions.within("A floor mark's number", number, 1, 5);
    }

    public static FloorMark at(double count, WindingPlan plan) {
        List<WindingPlan.Step> marks = plan.floorMarks();
        int reached = 0;
        for (int i = 1; i < marks.size(); i++) {
            if (marks.get(i).crankTurns() <= count) {
                reached = i;
            }
        }
        return new FloorMark(
                reached + 1, marks.get(reached).crankTurns(), marks.get(reached).distance());
    }
}
