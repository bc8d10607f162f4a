package org.skeinday.winding;

import java.util.Comparator;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.floor-mark}: the winder stands at one of the five marks of tape, as somebody beside the line saw it.
 * Each is counted once, whoever says so.
 *
 * @param number 1 at full stretch to 5 at the finish
 * @param elapsedMs since the first crank turn, by the server's clock, 0 to one day
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 * @param device that said so
 */
public record FloorMarkReached(String id, String windId, int number, long elapsedMs, long atMs, String device) {
    public static final int MARKS = 5;

    /** As the winder came to them. */
    static final Comparator<FloorMarkReached> AS_REACHED =
            Comparator.comparingLong(FloorMarkReached::elapsedMs).thenComparing(FloorMarkReached::id);

    public FloorMarkReached {
        Preconditions.filled("The floor mark's id", id);
        Preconditions.filled("The floor mark's wind", windId);
        Preconditions.within("A floor mark's number", number, 1, MARKS);
        Preconditions.within("Milliseconds since the first crank turn", elapsedMs, 0, WindMark.MOST_ELAPSED_MS);
        Preconditions.filled("The device", device);
    }
}
