package org.skeinday.dayplan;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Part;
import org.skeinday.units.Preconditions;

/**
 * An attempt that is to be flown, or is under way. Times are seconds since the plan's zero.
 *
 * @param number 1 for the entry's first
 * @param opens its window, when winding may begin; null for none
 * @param closes its window; null for none
 * @param counts whether it is official, so that the best motors go there
 * @param motors that may be used, 0 for the best, then 1 and so on; only the one that is, once it is wound; empty when
 *     any will do
 * @param benchSeconds what its motor, handed in until the window opens, needs inside it before it is wound; 0 for nothing
 * @param motorFrom from when the first of its motors may be wound, where none may be at once; 0 where one may
 * @param begun its parts that have started, in order from the first
 */
public record AttemptAhead(
        String entry,
        int number,
        @Nullable Long opens,
        @Nullable Long closes,
        boolean counts,
        SortedMap<String, Integer> motors,
        List<Begun> begun,
        long benchSeconds,
        long motorFrom) {
    /**
     * @param end null while it runs
     * @param who does or did what the part asks a person for; null when nobody knows
     */
    public record Begun(
            Part part,
            long start,
            @Nullable Long end,
            @Nullable String who) {
        public Begun {
            if (who != null) {
                Preconditions.named("Who does " + part.word(), who);
            }
            if (end != null && end < start) {
                throw new IllegalArgumentException(
                        part.word() + " must end after its start " + start + ", but ended at " + end);
            }
        }

        public Begun(Part part, long start, @Nullable Long end) {
            this(part, start, end, null);
        }

        public Begun by(@Nullable String person) {
            return new Begun(part, start, end, person);
        }
    }

    public AttemptAhead(
            String entry,
            int number,
            @Nullable Long opens,
            @Nullable Long closes,
            boolean counts,
            SortedMap<String, Integer> motors,
            List<Begun> begun) {
        this(entry, number, opens, closes, counts, motors, begun, 0, 0);
    }

    /** The same with so many seconds of bench work inside the window. */
    public AttemptAhead withBench(long seconds) {
        return new AttemptAhead(entry, number, opens, closes, counts, motors, begun, seconds, motorFrom);
    }

    public AttemptAhead {
        PlanTime.span("The bench work inside the window", benchSeconds);
        Preconditions.named("An entry", entry);
        Preconditions.within("The number of an attempt", (long) number, 1, 1000);
        PlanTime.time("When a motor may be wound", motorFrom);
        PlanTime.time("The opening of a window", opens);
        PlanTime.time("The closing of a window", closes);
        if (opens != null && closes != null && closes < opens) {
            throw new IllegalArgumentException(
                    "A window must close after it opens at " + opens + ", but closed at " + closes);
        }
        motors = Collections.unmodifiableSortedMap(new TreeMap<>(motors));
        begun = List.copyOf(begun);
        for (int i = 0; i < begun.size(); i++) {
            if (begun.get(i).part().ordinal() != i
                    || i + 1 < begun.size() && begun.get(i).end() == null) {
                throw new IllegalArgumentException(
                        "Parts must begin in order, each when the one before has ended, but were " + begun);
            }
        }
    }

    public static AttemptAhead of(
            String entry, int number, @Nullable Long opens, @Nullable Long closes, Map<String, Integer> motors) {
        return new AttemptAhead(entry, number, opens, closes, true, new TreeMap<>(motors), List.of());
    }

    /** Names the chain. */
    public String id() {
        return entry + " " + number;
    }

    @Nullable
    Begun begun(Part part) {
        return part.ordinal() < begun.size() ? begun.get(part.ordinal()) : null;
    }
}
