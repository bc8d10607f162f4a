package org.skeinday.winding;

import org.jspecify.annotations.Nullable;
import org.skeinday.motor.StopRule;

/** The one word that a winder is given, or none. Derived again on every view, never stored. */
public enum Word {
    NONE(""),
    SLOWER("slower"),
    TORQUE_LIMIT("torque limit"),
    TURNS_LIMIT("turns limit");

    /** Own default: from here below the torque limit the crank goes slower. */
    public static final int SLOW_MARKS = 2;
    /** Own default: and from here before the turns limit. */
    public static final int SLOW_CRANK_TURNS = 10;

    private final String text;

    Word(String text) {
        this.text = text;
    }

    /** As it stands on the page; empty for none. */
    public String text() {
        return text;
    }

    /**
     * The first reached of torque limit and turns limit, whatever the rule; when both are, the rule's own. A motor that is wound
     * until it breaks has neither.
     *
     * @param level the needle's mark
     * @param ceilingLevel the last mark not above the torque limit, null when not known
     * @param count crank turns on, null when not known
     * @param target crank turns at which winding ends at the latest, null when there is no plan
     */
    public static Word of(
            int level,
            @Nullable Integer ceilingLevel,
            @Nullable Double count,
            @Nullable Integer target,
            StopRule stop) {
        double marksLeft = ceilingLevel == null ? Double.POSITIVE_INFINITY : ceilingLevel - level;
        double turnsLeft = count == null || target == null ? Double.POSITIVE_INFINITY : target - count;
        return switch (stop) {
            case BREAKING -> NONE;
            case COUNT -> turnsLeft <= 0 ? TURNS_LIMIT : marksLeft <= 0 ? TORQUE_LIMIT : before(marksLeft, turnsLeft);
            case TORQUE -> marksLeft <= 0 ? TORQUE_LIMIT : turnsLeft <= 0 ? TURNS_LIMIT : before(marksLeft, turnsLeft);
        };
    }

    private static Word before(double marksLeft, double turnsLeft) {
        return marksLeft <= SLOW_MARKS || turnsLeft <= SLOW_CRANK_TURNS ? SLOWER : NONE;
    }
}
