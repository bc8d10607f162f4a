package org.skeinday.motor;

import java.util.Locale;

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
        return name().toLowerCase(Locale.ROOT);
    }

    /** @throws IllegalArgumentException for any other word */
    public static BreakPlace of(String word) {
        for (BreakPlace place : values()) {
            if (place.word().equals(word)) {
                return place;
            }
        }
        throw new IllegalArgumentException(
                "A motor parts at the strand, knot, ring or hook, or at an unknown place, but this was '" + word + "'");
    }

    public boolean isEvidenceOfTheRubber() {
        return this == STRAND;
    }
}
