package org.skeinday.winding;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.mark}: the needle crossed one mark of the meter, or stood at another than was counted and was set to it.
 *
 * @param step 1 for one mark up; -1 for one taken back, or the needle one mark down; 0 where it was set
 * @param elapsedMs since the first crank turn, by the reader's monotonic clock, 0 to one day
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 * @param leftOut taken out of everything after it was asked about; it stays in the record
 * @param setTo the division that the meter showed, 0 to {@value #MOST_DIVISIONS}, as somebody read it after one was missed;
 *     null for a crossing. What lay between is not known: no crossing is made up
 */
public record WindMark(
        String id,
        String windId,
        int step,
        long elapsedMs,
        long atMs,
        boolean leftOut,
        @Nullable Integer setTo) {
    /** A wind lasts minutes; what is a day after its first turn is no part of it. */
    public static final long MOST_ELAPSED_MS = 86_400_000;
    /** No meter has more (own default). */
    public static final int MOST_DIVISIONS = 1000;

    /** As the taps were made, whatever the order in which they came in; a repeat that is left out stands first. */
    static final Comparator<WindMark> AS_MADE = Comparator.comparingLong(WindMark::elapsedMs)
            .thenComparing(WindMark::id)
            .thenComparing(WindMark::leftOut, Comparator.reverseOrder())
            .thenComparing(WindMark::step)
            .thenComparing(WindMark::atMs);

    public WindMark {
        Preconditions.filled("The mark's id", id);
        Preconditions.filled("The mark's wind", windId);
        if (setTo != null) {
            Preconditions.within("The division on the meter", setTo, 0, MOST_DIVISIONS);
            Preconditions.within("The step of a mark that is set", step, 0, 0);
        } else if (step != 1 && step != -1) {
            throw new IllegalArgumentException("A mark's step must be 1 or -1, but was " + step);
        }
        Preconditions.within("Milliseconds since the first crank turn", elapsedMs, 0, MOST_ELAPSED_MS);
    }

    /** The needle crossed one mark. @param step 1 or -1 */
    public static WindMark crossed(String id, String windId, int step, long elapsedMs, long atMs) {
        return new WindMark(id, windId, step, elapsedMs, atMs, false, null);
    }

    /** Somebody read the meter. @param division 0 to {@value #MOST_DIVISIONS} */
    public static WindMark set(String id, String windId, int division, long elapsedMs, long atMs) {
        return new WindMark(id, windId, 0, elapsedMs, atMs, false, division);
    }

    /** The same, out of everything. */
    public WindMark omitted() {
        return new WindMark(id, windId, step, elapsedMs, atMs, true, setTo);
    }

    /** The same, counted again. */
    public WindMark takenIn() {
        return new WindMark(id, windId, step, elapsedMs, atMs, false, setTo);
    }

    /** Where the needle stands after it. @param level before, in divisions above zero */
    int levelAfter(int level) {
        return setTo == null ? Math.max(0, level + step) : setTo;
    }
}
