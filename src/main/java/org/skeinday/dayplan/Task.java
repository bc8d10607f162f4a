package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Something that takes time without a break. Times are whole steps of the plan's own unit (seconds, for an event).
 *
 * @param duration 0 or more; a task of no duration is a moment and holds nothing
 * @param needs how many of each resource it holds from start to end, 1 or more each
 * @param people one person for each, all different
 * @param motors of these it takes one, each with how little it is wanted there (0 is best); none asked when empty
 * @param earliest start; from 0 when null, or from the fixed start
 * @param latestEnd its window closes; none when null
 * @param fixedStart where it must stay: it runs, or somebody has fixed it
 * @param chain what is done or left out as a whole, for example one attempt
 */
public record Task(
        String id,
        long duration,
        SortedMap<String, Integer> needs,
        List<PersonNeed> people,
        SortedMap<String, Integer> motors,
        @Nullable Long earliest,
        @Nullable Long latestEnd,
        @Nullable Long fixedStart,
        @Nullable String chain) {
    public Task {
        Preconditions.named("A task", id);
        PlanTime.span("The duration of " + id, duration);
        PlanTime.time("The earliest start of " + id, earliest);
        PlanTime.time("The latest end of " + id, latestEnd);
        PlanTime.time("The fixed start of " + id, fixedStart);
        for (var need : needs.entrySet()) {
            Preconditions.within("What " + id + " needs of " + need.getKey(), (long) need.getValue(), 1, 1_000_000);
        }
        for (var motor : motors.entrySet()) {
            Preconditions.within("How little " + motor.getKey() + " is wanted", (long) motor.getValue(), 0, 1_000_000);
        }
        needs = Collections.unmodifiableSortedMap(new TreeMap<>(needs));
        motors = Collections.unmodifiableSortedMap(new TreeMap<>(motors));
        people = List.copyOf(people);
    }

    public static Task of(String id, long duration) {
        return new Task(id, duration, new TreeMap<>(), List.of(), new TreeMap<>(), null, null, null, null);
    }

    public Task needing(String resource, int amount) {
        SortedMap<String, Integer> more = new TreeMap<>(needs);
        more.merge(resource, amount, Integer::sum);
        return new Task(id, duration, more, people, motors, earliest, latestEnd, fixedStart, chain);
    }

    public Task needingPerson(PersonNeed need) {
        List<PersonNeed> more = new ArrayList<>(people);
        more.add(need);
        return new Task(id, duration, needs, more, motors, earliest, latestEnd, fixedStart, chain);
    }

    /** @param dislikes each motor that will do, 0 for the best one */
    public Task takingOneOf(Map<String, Integer> dislikes) {
        return new Task(id, duration, needs, people, new TreeMap<>(dislikes), earliest, latestEnd, fixedStart, chain);
    }

    public Task within(@Nullable Long from, @Nullable Long until) {
        return new Task(id, duration, needs, people, motors, from, until, fixedStart, chain);
    }

    public Task fixedAt(@Nullable Long start) {
        return new Task(id, duration, needs, people, motors, earliest, latestEnd, start, chain);
    }

    public Task lasting(long other) {
        return new Task(id, other, needs, people, motors, earliest, latestEnd, fixedStart, chain);
    }

    public Task inChain(String name) {
        return new Task(id, duration, needs, people, motors, earliest, latestEnd, fixedStart, name);
    }

    Task without(SortedMap<String, Integer> onlyNeeds, List<PersonNeed> onlyPeople, boolean anyMotor) {
        return new Task(
                id,
                duration,
                onlyNeeds,
                onlyPeople,
                anyMotor ? motors : new TreeMap<>(),
                earliest,
                latestEnd,
                fixedStart,
                chain);
    }

    /** Before this it never starts. */
    public long earliestStart() {
        if (earliest != null) {
            return earliest;
        }
        return fixedStart == null ? 0 : fixedStart;
    }

    public boolean isFixed() {
        return fixedStart != null;
    }
}
