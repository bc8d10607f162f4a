package org.skeinday.hall;

import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;

/**
 * A winding lane: the straight line from the mount, where the meter is, to the winder end.
 *
 * @param length hook to hook, 0.3 to 60 m; the winder's feet stand half a metre further
 */
public record Lane(String name, Length length) {
    public Lane {
        Preconditions.filled("The lane's name", name);
        Preconditions.within("The lane's length in mm", length.millimetres(), 300, 60_000);
    }

    public Spot mountEnd() {
        return new Spot(0, 0);
    }

    public Spot winderEnd() {
        return new Spot(length.millimetres(), 0);
    }
}
