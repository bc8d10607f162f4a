package org.skeinday.winding;

import java.util.Comparator;
import java.util.List;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.phase}: what the winder did, as the reader tapped it.
 *
 * @param phase one of {@link #PHASES}
 * @param elapsedMs since the first crank turn, by the reader's monotonic clock, 0 to one day
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 */
public record WindPhase(String id, String windId, String phase, long elapsedMs, long atMs) {
    /** The first step towards the meter. */
    public static final String STEPPING_IN = "stepping-in";
    /** Cranking ended; the back-off begins. */
    public static final String STOPPED = "stopped";
    /** The stop, or the break, was a mistake: winding goes on. */
    public static final String AGAIN = "again";
    /** The last turn was taken off; the hold begins. */
    public static final String BACKED_OFF = "backed-off";
    /** The motor broke. */
    public static final String BROKE = "broke";
    /** The motor left the meter. */
    public static final String OFF_METER = "off-meter";
    /** It hangs on the meter again, still wound: some turns come off, or more go on. The hold goes on. */
    public static final String BACK_ON = "back-on";

    public static final List<String> PHASES =
            List.of(STEPPING_IN, STOPPED, AGAIN, BACKED_OFF, BROKE, OFF_METER, BACK_ON);

    /** As the taps were made, whatever the order in which they came in. */
    static final Comparator<WindPhase> AS_MADE = Comparator.comparingLong(WindPhase::elapsedMs)
            .thenComparing(WindPhase::id)
            .thenComparing(WindPhase::phase)
            .thenComparing(WindPhase::atMs);

    public WindPhase {
        Preconditions.filled("The phase's id", id);
        Preconditions.filled("The phase's wind", windId);
        Preconditions.oneOf("A phase", phase, PHASES);
        Preconditions.within("Milliseconds since the first crank turn", elapsedMs, 0, WindMark.MOST_ELAPSED_MS);
    }
}
