package org.skeinday.review;

import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Part;
import org.skeinday.units.Preconditions;

/**
 * How long a part of an attempt was planned to take and took; null where it was not planned or not seen.
 *
 * @param plannedSeconds zero or more
 * @param actualSeconds zero or more
 */
public record StepTime(
        Part part, @Nullable Long plannedSeconds, @Nullable Long actualSeconds) {
    private static final long LONGEST = 86_400;

    public StepTime {
        Preconditions.withinIfKnown("The planned seconds", plannedSeconds, 0, LONGEST);
        Preconditions.withinIfKnown("The actual seconds", actualSeconds, 0, LONGEST);
    }

    /** How much longer than planned; null unless both are known. */
    public @Nullable Long overSeconds() {
        return plannedSeconds == null || actualSeconds == null ? null : (Long) (actualSeconds - plannedSeconds);
    }
}
