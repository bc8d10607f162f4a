package org.skeinday.dayplan;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Who starts what, when, with which motor.
 *
 * @param starts by task
 * @param people by task, in the order of its needs; tasks that need nobody are left out
 * @param motors by task; tasks that take none are left out
 */
public record DayPlan(
        SortedMap<String, Long> starts, SortedMap<String, List<String>> people, SortedMap<String, String> motors) {
    public DayPlan {
        starts = Collections.unmodifiableSortedMap(new TreeMap<>(starts));
        people = Collections.unmodifiableSortedMap(new TreeMap<>(people));
        motors = Collections.unmodifiableSortedMap(new TreeMap<>(motors));
    }

    public static DayPlan ofStarts(Map<String, Long> starts) {
        return new DayPlan(new TreeMap<>(starts), new TreeMap<>(), new TreeMap<>());
    }

    /** @throws IllegalArgumentException when the plan does not know the task */
    public long start(String task) {
        Long start = starts.get(task);
        if (start == null) {
            throw new IllegalArgumentException(
                    "The plan must know the task " + task + ", but knows " + starts.keySet());
        }
        return start;
    }

    /** @return this without what the problem does not ask for any more */
    DayPlan fitting(PlanProblem problem) {
        SortedMap<String, Long> when = new TreeMap<>();
        SortedMap<String, List<String>> who = new TreeMap<>();
        SortedMap<String, String> which = new TreeMap<>();
        for (Task task : problem.tasks()) {
            Long start = starts.get(task.id());
            List<String> there = people.get(task.id());
            String motor = motors.get(task.id());
            if (start != null) {
                when.put(task.id(), start);
            }
            if (there != null && !task.people().isEmpty() && task.duration() > 0) {
                who.put(task.id(), there);
            }
            if (motor != null && !task.motors().isEmpty() && task.duration() > 0) {
                // Where just one will do, another was taken than planned.
                which.put(task.id(), task.motors().size() == 1 ? task.motors().firstKey() : motor);
            }
        }
        return new DayPlan(when, who, which);
    }

    DayPlan withPeople(SortedMap<String, List<String>> others) {
        return new DayPlan(starts, others, motors);
    }

    boolean sameButPeople(DayPlan other) {
        return starts.equals(other.starts) && motors.equals(other.motors);
    }

    List<String> peopleOf(String task) {
        return people.getOrDefault(task, List.of());
    }
}
