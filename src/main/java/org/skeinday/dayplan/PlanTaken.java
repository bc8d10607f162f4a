package org.skeinday.dayplan;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code plan.taken}: from now on people work by this plan, in place of any before.
 *
 * @param atMs when it was taken, ms since 1970 UTC
 * @param givenUp attempts that it leaves out, as {@link AttemptAhead#id} names them
 * @param windows as they were then; empty where nobody noted them
 * @param byRules whether its attempts have the rules' numbers; null in plans of before, which went by the running numbers
 */
public record PlanTaken(
        String eventId,
        long atMs,
        @Nullable String personId,
        List<Planned> tasks,
        @Nullable List<Window> windows,
        @Nullable List<String> givenUp,
        @Nullable Boolean byRules) {
    /** An entry's window, ms since 1970 UTC; null where it has no such end. */
    public record Window(
            String entry, @Nullable Long opensMs, @Nullable Long closesMs) {}

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
        windows = windows == null ? List.of() : List.copyOf(windows);
        givenUp = givenUp == null ? List.of() : List.copyOf(givenUp);
    }

    /** Never null: plans that were taken before windows were noted have none. */
    @Override
    public List<Window> windows() {
        return windows == null ? List.of() : windows;
    }

    /** Never null, as the windows. */
    @Override
    public List<String> givenUp() {
        return givenUp == null ? List.of() : givenUp;
    }
}
