package org.skeinday.winding;

import java.util.Comparator;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.mark}: the needle crossed one mark of the meter.
 *
 * @param step 1 for one mark up; -1 for one taken back, or the needle one mark down
 * @param elapsedMs since the first crank turn, by the reader's monotonic clock, 0 to one day
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 * @param leftOut taken out of everything after it was asked about; it stays in the record
 */
public record WindMark(String id, String windId, int step, long elapsedMs, long atMs, boolean leftOut) {
    /** A wind lasts minutes; what is a day after its first turn is no part of it. */
    public static final long MOST_ELAPSED_MS = 86_400_000;

    /** As the taps were made, whatever the order in which they came in; a repeat that is left out stands first. */
    static final Comparator<WindMark> AS_MADE = Comparator.comparingLong(WindMark::elapsedMs)
            .thenComparing(WindMark::id)
            .thenComparing(WindMark::leftOut, Comparator.reverseOrder())
            .thenComparing(WindMark::step)
            .thenComparing(WindMark::atMs);

    public WindMark {
        Preconditions.filled("The mark's id", id);
        Preconditions.filled("The mark's wind", windId);
        if (step != 1 && step != -1) {
            throw new IllegalArgumentException("A mark's step must be 1 or -1, but was " + step);
        }
        Preconditions.within("Milliseconds since the first crank turn", elapsedMs, 0, MOST_ELAPSED_MS);
    }
}
