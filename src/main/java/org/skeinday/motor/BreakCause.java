package org.skeinday.motor;

import org.skeinday.units.EnumWords;

/** Why a motor broke, as the coach says it. A break that nobody has spoken of counts as the rubber's, by accident. */
public enum BreakCause {
    /** It was wound until it broke: a break test, from which K and the torque limit come. */
    TEST("It was a break test"),
    /** The rubber parted by accident: it counts in the risk of breaking, and gives no torque limit. */
    ACCIDENT("An accident in the rubber"),
    KNOT("It parted at the knot"),
    RING("It parted at a ring"),
    HOOK("It parted at a hook"),
    DROPPED("It was dropped");

    private final String words;

    BreakCause(String words) {
        this.words = words;
    }

    /** As a person reads it. */
    public String words() {
        return words;
    }

    /** As the record writes it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for any other word */
    public static BreakCause of(String word) {
        return EnumWords.parse("Why a motor broke", BreakCause.class, word);
    }

    /** Where it parted by this cause; for one in the rubber as it was seen, else in the strand. */
    BreakPlace place(BreakPlace seen) {
        return switch (this) {
            case TEST, ACCIDENT -> seen.isOutsideTheRubber() ? BreakPlace.STRAND : seen;
            case KNOT -> BreakPlace.KNOT;
            case RING -> BreakPlace.RING;
            case HOOK -> BreakPlace.HOOK;
            case DROPPED -> BreakPlace.DROPPED;
        };
    }
}
