package org.skeinday.dayplan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code day.setback}: something that keeps a person or a model away, until its time is over or somebody says so; a
 * model is aloft until somebody says so.
 *
 * @param kind one of {@link #KINDS}
 * @param who a person's id when away, else the entry's id
 * @param before number of the first attempt that needs the model; 1 for a person
 * @param fromMs when it began, ms since 1970 UTC
 * @param lastsS seconds at most twelve hours; null for a person who does not come back today
 * @param curesS seconds for glue to cure after a repair, 0 for none
 */
public record Setback(
        String id,
        String eventId,
        String kind,
        String who,
        int before,
        long fromMs,
        @Nullable Integer lastsS,
        int curesS,
        @Nullable String byPerson) {
    public static final String AWAY = "away";
    public static final String REPAIR = "repair";
    public static final String RETRIEVAL = "retrieval";
    public static final List<String> KINDS = List.of(AWAY, REPAIR, RETRIEVAL);

    private static final int LONGEST_S = 12 * 3600;

    public Setback {
        Preconditions.oneOf("A setback", kind, KINDS);
        if (lastsS == null && !kind.equals(AWAY)) {
            throw new IllegalArgumentException("A " + kind + " must say how long it lasts, but did not");
        }
        Preconditions.within("How long it lasts in s", lastsS == null ? null : (Long) (long) lastsS, 0, LONGEST_S);
        Preconditions.within("What the glue needs in s", (long) curesS, 0, LONGEST_S);
        Preconditions.within("The number of an attempt", (long) before, 1, 1000);
    }
}
