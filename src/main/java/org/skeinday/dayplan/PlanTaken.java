package org.skeinday.dayplan;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code plan.taken}: from now on people work by this plan, in place of any before.
 *
 * @param atMs when it was taken, ms since 1970 UTC
 */
public record PlanTaken(String eventId, long atMs, @Nullable String personId, List<Planned> tasks) {
    /**
     * One task of it.
     *
     * @param task as {@link EventChains#task} names it
     * @param startMs ms since 1970 UTC
     * @param people ids of who does it, by comma; empty for nobody in particular
     * @param motor its tag, null when any will do or none is needed
     */
    public record Planned(
            String task,
            long startMs,
            long endMs,
            String people,
            @Nullable String motor) {
        public Planned {
            if (endMs < startMs) {
                throw new IllegalArgumentException(
                        task + " must end after its start, but ended " + (startMs - endMs) + " ms before it");
            }
        }

        public List<String> who() {
            return people.isEmpty() ? List.of() : List.of(people.split(",", -1));
        }
    }

    public PlanTaken {
        tasks = List.copyOf(tasks);
    }
}
