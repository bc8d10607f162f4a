package org.skeinday.winding;

import org.jspecify.annotations.Nullable;

/** Crank turns as people type them: 0 to 10,000, a comma as good as a point. */
public final class CrankTurns {
    private static final int MOST = 10_000;

    private CrankTurns() {}

    /** Null when nothing was typed. @throws IllegalArgumentException saying what would be right */
    public static @Nullable Integer whole(String typed) {
        String text = typed.strip();
        if (text.isEmpty()) {
            return null;
        }
        if (!text.matches("\\d{1,5}") || Integer.parseInt(text) > MOST) {
            throw new IllegalArgumentException(
                    "Crank turns must be a whole number from 0 to " + MOST + ", but were '" + text + "'");
        }
        return Integer.valueOf(text);
    }

    /** Those at the last turn. @throws IllegalArgumentException as {@link #whole}, and when nothing was typed */
    public static Integer atStop(String typed) {
        Integer turns = whole(typed);
        if (turns == null) {
            throw new IllegalArgumentException(
                    "Crank turns at the last turn are needed: without them nothing else can be computed");
        }
        return turns;
    }

    /** Halves and the like possible. Null when nothing was typed. @throws IllegalArgumentException as {@link #whole} */
    public static @Nullable Double part(String typed) {
        String text = typed.strip().replace(',', '.');
        if (text.isEmpty()) {
            return null;
        }
        if (!text.matches("\\d{1,5}(\\.\\d{1,2})?") || Double.parseDouble(text) > MOST) {
            throw new IllegalArgumentException(
                    "Crank turns must be a number from 0 to " + MOST + ", but were '" + typed.strip() + "'");
        }
        return Double.valueOf(text);
    }
}
