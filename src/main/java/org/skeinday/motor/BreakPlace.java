package org.skeinday.motor;

import org.skeinday.units.EnumWords;

/** Where a motor parted, or what parted it. Knot, ring and hook say nothing of the rubber, nor does a fall (common practice). */
public enum BreakPlace {
    STRAND,
    KNOT,
    RING,
    HOOK,
    /** Somebody looked, and it cannot be told: it counts as the rubber's. */
    UNKNOWN,
    /** It was dropped, and parted by that. */
    DROPPED;

    /** As the record and files write it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for any other word */
    public static BreakPlace of(String word) {
        return EnumWords.parse("Where a motor parted", BreakPlace.class, word);
    }

    /** Whether the cause lies outside the rubber: then the motor had stood so many turns. */
    public boolean isOutsideTheRubber() {
        return this == KNOT || this == RING || this == HOOK || this == DROPPED;
    }
}
