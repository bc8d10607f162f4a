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

    List<String> peopleOf(String task) {
        return people.getOrDefault(task, List.of());
    }
}
