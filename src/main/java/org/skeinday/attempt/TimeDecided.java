package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.time-decided}: what was decided of an official time beside what the watches told. The official time is
 * then {@code officialMs}, and signatures are asked again.
 *
 * @param kind a word of {@link Kind}
 * @param ms the jury's time, the watches' time by rules that were changed, or how much is deducted; null for an undoing and
 *     for a share
 * @param perMille the share that is deducted, 1 to 1,000 thousandths; null for none
 * @param undoes the decision that no longer holds; null for none
 * @param watches how the watches' time came about by rules that were changed; null for anything else
 * @param how a sentence with all that the official time is made of
 */
public record TimeDecided(
        String id,
        String attemptId,
        String kind,
        long atMs,
        @Nullable String personId,
        String device,
        String reason,
        @Nullable Long ms,
        @Nullable Integer perMille,
        @Nullable String undoes,
        @Nullable String watches,
        long officialMs,
        String how) {
    /** What is decided. */
    public enum Kind {
        /** The watches' time, computed anew by rules that were changed. */
        RULES,
        /** A time by the jury, in the place of the watches'. */
        JURY,
        /** So much less, or such a share. */
        DEDUCTION,
        /** An earlier decision holds no longer. */
        UNDO
    }

    public static final List<String> KINDS = EnumWords.of(Kind.class);
    private static final int ALL = 1000;

    public TimeDecided {
        Preconditions.oneOf("What is decided of a time", kind, KINDS);
        Preconditions.filled("The reason for what is decided of a time", reason);
        Preconditions.zeroOrMore("An official time", officialMs, "ms");
        if (perMille != null) {
            Preconditions.within("A share in thousandths", perMille, 1, ALL);
        }
    }

    public boolean is(Kind one) {
        return kind.equals(EnumWords.of(one));
    }
}
