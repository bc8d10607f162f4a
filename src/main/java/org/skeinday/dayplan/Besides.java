package org.skeinday.dayplan;

import java.util.List;

/**
 * What a day holds besides attempts. Times are seconds since the plan's zero.
 *
 * @param poles for models stuck aloft, 0 to 1000
 */
public record Besides(List<Absence> absences, List<Repair> repairs, List<Retrieval> retrievals, int poles) {
    public static final Besides NOTHING = new Besides(List.of(), List.of(), List.of(), 0);

    /** May bring down a model that is stuck aloft. */
    public static final String RETRIEVES = "retrieves";

    /** Somebody is away, from before until after. */
    public record Absence(String person, long from, long until) {
        public Absence {
            Require.name("Who is away", person);
            Require.time("The start of an absence", from);
            Require.time("The end of an absence", until);
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
     */
    public record Repair(String entry, int before, long earliest, long work, long cure) {
        public Repair {
            Require.name("An entry", entry);
            Require.within("The number of an attempt", (long) before, 1, 1000);
            Require.time("The earliest start of a repair", earliest);
            Require.span("The work of a repair", work);
            Require.span("The cure of a repair", cure);
        }
    }

    /**
     * A model stuck aloft is brought down with a pole by somebody cleared for it.
     *
     * @param before the number of the first attempt that needs the model; earlier ones fly the spare
     * @param earliest start
     */
    public record Retrieval(String entry, int before, long earliest, long seconds) {
        public Retrieval {
            Require.name("An entry", entry);
            Require.within("The number of an attempt", (long) before, 1, 1000);
            Require.time("The earliest start of a retrieval", earliest);
            Require.span("What a retrieval takes", seconds);
        }
    }

    public Besides {
        absences = List.copyOf(absences);
        repairs = List.copyOf(repairs);
        retrievals = List.copyOf(retrievals);
        Require.within("Poles", (long) poles, 0, 1000);
    }
}
