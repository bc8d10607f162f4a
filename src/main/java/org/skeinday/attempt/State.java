package org.skeinday.attempt;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

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

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static State of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }

    /** Called and neither finished nor given up: it holds the floor or the bench. */
    public boolean isOpen() {
        return BEFORE_RELEASE.contains(this) || this == RELEASED || this == LANDED;
    }

    public boolean isBeforeRelease() {
        return BEFORE_RELEASE.contains(this);
    }

    /**
     * Whether an attempt may go from here to there. Winding and holding may be passed over: officials do not see every
     * entry's bench.
     */
    public boolean mayBecome(State next) {
        return switch (next) {
            case PLANNED -> false;
            case CALLED -> this == PLANNED;
            case WINDING -> this == CALLED;
            case HOLDING -> this == WINDING;
            case RELEASED -> BEFORE_RELEASE.contains(this);
            case LANDED -> this == RELEASED;
            case CLOSED -> this == LANDED;
            case SCRUBBED -> BEFORE_RELEASE.contains(this);
            case VOID -> this == RELEASED || this == LANDED;
        };
    }
}
