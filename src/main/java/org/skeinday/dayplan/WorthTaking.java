package org.skeinday.dayplan;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The motors of each task that some best plan takes. When n other tasks want any of its motors, one of its n + 1 best is
 * always free, so that no lesser one need be looked at; but the one it has in the plan in force, which may stay.
 */
final class WorthTaking {
    private WorthTaking() {}

    /** @return by task, those that take a motor */
    static Map<Task, Set<String>> of(PlanProblem problem) {
        List<Task> takers = problem.tasks().stream()
                .filter(task -> task.duration() > 0 && !task.motors().isEmpty())
                .toList();
        Map<String, Set<String>> wantedBy = new HashMap<>();
        takers.forEach(task -> task.motors()
                .keySet()
                .forEach(motor ->
                        wantedBy.computeIfAbsent(motor, none -> new HashSet<>()).add(task.id())));
        Map<Task, Set<String>> worth = new LinkedHashMap<>();
        takers.forEach(task -> worth.put(task, of(task, wantedBy, problem.inForce())));
        return worth;
    }

    private static Set<String> of(Task task, Map<String, Set<String>> wantedBy, @Nullable DayPlan inForce) {
        Set<String> rivals = new HashSet<>();
        task.motors().keySet().forEach(motor -> rivals.addAll(wantedBy.getOrDefault(motor, Set.of())));
        Set<String> worth = new TreeSet<>();
        task.motors().entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .limit(rivals.size())
                .forEach(motor -> worth.add(motor.getKey()));
        String before = inForce == null ? null : inForce.motors().get(task.id());
        if (before != null && task.motors().containsKey(before)) {
            worth.add(before);
        }
        return worth;
    }
}
