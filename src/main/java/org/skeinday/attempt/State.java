package org.skeinday.attempt;

import java.util.EnumSet;
import java.util.Set;
import org.skeinday.units.EnumWords;

/** Where an attempt stands. */
public enum State {
    PLANNED,
    CALLED,
    WINDING,
    HOLDING,
    RELEASED,
    LANDED,
    CLOSED,
    SCRUBBED,
    VOID;

    private static final Set<State> BEFORE_RELEASE = EnumSet.of(CALLED, WINDING, HOLDING);
    private static final Set<State> LEFT_THE_HAND = EnumSet.of(RELEASED, LANDED, CLOSED, VOID);

    public String word() {
        return EnumWords.of(this);
    }

    public static State of(String word) {
        return EnumWords.parse("The state", State.class, word);
    }

    /** Called and neither finished nor given up: it holds the floor or the bench. */
    public boolean isOpen() {
        return BEFORE_RELEASE.contains(this) || this == RELEASED || this == LANDED;
    }

    public boolean isBeforeRelease() {
        return BEFORE_RELEASE.contains(this);
    }

    /** It was released, whatever became of it. */
    public boolean hasLeftTheHand() {
        return LEFT_THE_HAND.contains(this);
    }
}
