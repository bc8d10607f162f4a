package org.skeinday.dayplan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * What a day holds besides attempts. Times are seconds since the plan's zero.
 *
 * @param poles for models stuck aloft, 0 to 1000
 */
public record ParallelTasks(List<Absence> absences, List<Repair> repairs, List<Retrieval> retrievals, int poles) {
    public static final ParallelTasks NOTHING = new ParallelTasks(List.of(), List.of(), List.of(), 0);

    /** May bring down a model that is stuck aloft. */
    public static final String RETRIEVES = "retrieves";

    /** Somebody is away, from before until after. */
    public record Absence(String person, long from, long until) {
        public Absence {
            Preconditions.named("Who is away", person);
            PlanTime.time("The start of an absence", from);
            PlanTime.time("The end of an absence", until);
            if (until < from) {
                throw new IllegalArgumentException(
                        "An absence must end after its start " + from + ", but ended at " + until);
            }
        }
    }

    /**
     * A model is mended, and its glue cures while hands are free.
     *
     * @param before the number of the first attempt that needs the model; earlier ones fly the spare
     * @param earliest start
     * @param work seconds at the bench
     * @param cure seconds after that, until the model may be prepared
     * @param began when it runs; null while it is ahead
     */
    public record Repair(
            String entry,
            int before,
            long earliest,
            long work,
            long cure,
            @Nullable Long began) {
        public Repair {
            model(entry, before, "a repair", earliest, began);
            PlanTime.span("The work of a repair", work);
            PlanTime.span("The cure of a repair", cure);
        }

        public Repair(String entry, int before, long earliest, long work, long cure) {
            this(entry, before, earliest, work, cure, null);
        }

        public Repair begun(long start) {
            return new Repair(entry, before, earliest, work, cure, start);
        }
    }

    /**
     * A model stuck aloft is brought down with a pole by somebody cleared for it.
     *
     * @param before the number of the first attempt that needs the model; earlier ones fly the spare
     * @param earliest start
     * @param began when it runs; null while it is ahead
     */
    public record Retrieval(
            String entry,
            int before,
            long earliest,
            long seconds,
            @Nullable Long began) {
        public Retrieval {
            model(entry, before, "a retrieval", earliest, began);
            PlanTime.span("What a retrieval takes", seconds);
        }

        public Retrieval(String entry, int before, long earliest, long seconds) {
            this(entry, before, earliest, seconds, null);
        }

        public Retrieval begun(long start) {
            return new Retrieval(entry, before, earliest, seconds, start);
        }
    }

    private static void model(String entry, int before, String what, long earliest, @Nullable Long began) {
        Preconditions.named("An entry", entry);
        Preconditions.within("The number of an attempt", (long) before, 1, 1000);
        PlanTime.time("The earliest start of " + what, earliest);
        PlanTime.time("The start of " + what, began);
    }

    public ParallelTasks {
        absences = List.copyOf(absences);
        repairs = List.copyOf(repairs);
        retrievals = List.copyOf(retrievals);
        Preconditions.within("Poles", (long) poles, 0, 1000);
    }
}
