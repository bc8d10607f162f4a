package org.skeinday.dayplan.web;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.dayplan.AttemptAhead;
import org.skeinday.dayplan.DayPlan;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.Scenario;
import org.skeinday.dayplan.Setback;
import org.skeinday.platform.db.Tx;

/**
 * The day of the team's own entries as the plan needs it: who else flies has windows of their own.
 *
 * @param zeroMs the plan's zero, ms since 1970 UTC: whole minutes, not after anything that is planned or has begun
 * @param now seconds since then
 * @param setbacks what keeps people or models away and is not over
 * @param crew ids of everybody who helps with the event
 * @param entryNames of own entries, by id
 * @param isOnlyOthers whether there are entries and none of them is own
 * @param ready when motors that may not be wound at once may be, ms since 1970 UTC, by tag
 * @param taken the plan in force, null before the first
 */
record DayNow(
        EventAdded event,
        long zeroMs,
        long now,
        Scenario day,
        List<Setback> setbacks,
        List<String> crew,
        SortedMap<String, String> entryNames,
        boolean isOnlyOthers,
        SortedMap<String, Long> ready,
        @Nullable PlanTaken taken) {
    static Optional<DayNow> read(Tx tx, long nowMs) {
        return EventStore.next(tx).map(event -> new PlanDayReader(tx, event, nowMs).read());
    }

    /** The day without what the plan in force has given up: that is no news while it holds. */
    Scenario asTaken() {
        return withoutGivenUp(day);
    }

    /** The same of a day that is supposed. */
    Scenario withoutGivenUp(Scenario supposed) {
        Scenario left = supposed;
        for (AttemptAhead attempt : supposed.attempts()) {
            left = attempt.begun().isEmpty() && givenUp().contains(attempt.id())
                    ? left.withoutAttempt(attempt.id())
                    : left;
        }
        return left;
    }

    List<String> givenUp() {
        return taken == null ? List.of() : taken.givenUp();
    }

    /** The plan in force by the plan's own clock; null before the first. */
    @Nullable
    DayPlan inForce() {
        if (taken == null) {
            return null;
        }
        SortedMap<String, Long> starts = new TreeMap<>();
        SortedMap<String, List<String>> people = new TreeMap<>();
        SortedMap<String, String> motors = new TreeMap<>();
        taken.tasks().forEach(task -> {
            starts.put(task.task(), (task.startMs() - zeroMs) / 1000);
            if (!task.who().isEmpty()) {
                people.put(task.task(), task.who());
            }
            String motor = task.motor();
            if (motor != null) {
                motors.put(task.task(), motor);
            }
        });
        return new DayPlan(starts, people, motors);
    }

    /** As they are now, one for each own entry that still flies; of no window where it has none. */
    List<PlanTaken.Window> windows() {
        SortedMap<String, PlanTaken.Window> windows = new TreeMap<>();
        for (AttemptAhead attempt : day.attempts()) {
            Long opens = attempt.opens();
            Long closes = attempt.closes();
            windows.put(
                    attempt.entry(),
                    new PlanTaken.Window(
                            attempt.entry(),
                            opens == null ? null : (Long) ms(opens),
                            closes == null ? null : (Long) ms(closes)));
        }
        return List.copyOf(windows.values());
    }

    String entryName(String id) {
        return entryNames.getOrDefault(id, "An entry");
    }

    long ms(long seconds) {
        return zeroMs + seconds * 1000;
    }
}
