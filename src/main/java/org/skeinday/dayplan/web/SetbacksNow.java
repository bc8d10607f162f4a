package org.skeinday.dayplan.web;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.skeinday.dayplan.ParallelTasks;
import org.skeinday.dayplan.Setback;

/** What keeps people and models away, as the plan needs it: what has begun goes on at once. */
final class SetbacksNow {
    /** Where nobody of the team may bring a model down. */
    static final String VENUE = "the venue's people";

    /** It is aloft until somebody says that it is down. */
    private static final long AT_LEAST_S = 60;

    private final List<Setback> setbacks;
    private final long nowMs;
    private final long zeroMs;
    private final UnaryOperator<String> entryOf;

    /** @param entryOf name of an entry's id */
    SetbacksNow(List<Setback> setbacks, long nowMs, long zeroMs, UnaryOperator<String> entryOf) {
        this.setbacks = setbacks;
        this.nowMs = nowMs;
        this.zeroMs = zeroMs;
        this.entryOf = entryOf;
    }

    /** Not back today. */
    static boolean isGone(Setback one, String person) {
        return one.kind().equals(Setback.AWAY) && one.who().equals(person) && one.lastsS() == null;
    }

    /** Not there now. */
    static boolean isAway(Setback one, String person, long nowMs) {
        Integer lasts = one.lastsS();
        return one.kind().equals(Setback.AWAY)
                && one.who().equals(person)
                && (lasts == null || nowMs < one.fromMs() + lasts * 1000L);
    }

    ParallelTasks besides() {
        List<ParallelTasks.Absence> absences = new ArrayList<>();
        List<ParallelTasks.Repair> repairs = new ArrayList<>();
        List<ParallelTasks.Retrieval> retrievals = new ArrayList<>();
        long now = Math.max(0, (nowMs - zeroMs) / 1000);
        for (Setback one : setbacks) {
            Integer lasts = one.lastsS();
            if (lasts != null) {
                long from = (one.fromMs() - zeroMs) / 1000;
                long left = Math.max(0, from + lasts - now);
                long cures = Math.max(0, from + lasts + one.curesS() - now) - left;
                String entry = entryOf.apply(one.who());
                switch (one.kind()) {
                    case Setback.REPAIR -> repairs.add(new ParallelTasks.Repair(entry, one.before(), now, left, cures));
                    case Setback.RETRIEVAL ->
                        retrievals.add(
                                new ParallelTasks.Retrieval(entry, one.before(), now, Math.max(AT_LEAST_S, left)));
                    default -> absences.add(new ParallelTasks.Absence(one.who(), from, from + lasts));
                }
            }
        }
        return new ParallelTasks(absences, repairs, retrievals, retrievals.isEmpty() ? 0 : 1);
    }
}
