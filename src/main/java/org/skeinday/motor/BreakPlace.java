package org.skeinday.motor;

import org.skeinday.units.EnumWords;

/** Where a motor parted. Only the strand speaks of the rubber; knot, ring and hook do not (common practice). */
public enum BreakPlace {
    STRAND,
    KNOT,
    RING,
    HOOK,
    /** Somebody looked, and it cannot be told. */
    UNKNOWN;

    /** As the record and files write it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for any other word */
    public static BreakPlace of(String word) {
        return EnumWords.parse("Where a motor parted", BreakPlace.class, word);
    }

    public boolean isEvidenceOfTheRubber() {
        return this == STRAND;
    }
}
