package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;

/** Tries every start of every task, and every person and motor, step by step in time: slow, plain, and no solver. */
final class BruteForce {
    private final PlanProblem problem;
    private final Goal goal;
    private final long last;
    private OptionalLong best = OptionalLong.empty();

    private BruteForce(PlanProblem problem, Goal goal, long last) {
        this.problem = problem;
        this.goal = goal;
        this.last = last;
    }

    /** @param last start that is tried @return the best objective; empty when no starts will do */
    static OptionalLong best(PlanProblem problem, Goal goal, long last) {
        BruteForce all = new BruteForce(problem, goal, last);
        all.start(0, new TreeMap<>());
        return all.best;
    }

    static boolean possible(PlanProblem problem, long last) {
        return best(problem, Goal.MAKESPAN, last).isPresent();
    }

    private void start(int at, Map<String, Long> starts) {
        if (at == problem.tasks().size()) {
            if (lagsKept(starts) && capacitiesKept(starts) && taken(0, 0, starts, new HashMap<>())) {
                note(starts);
            }
            return;
        }
        Task task = problem.tasks().get(at);
        long from = task.earliest() != null ? task.earliest() : task.fixedStart() != null ? task.fixedStart() : 0;
        for (long start = from; start <= last; start++) {
            boolean inside = task.latestEnd() == null || start + task.duration() <= task.latestEnd();
            if (inside && (task.fixedStart() == null || task.fixedStart() == start)) {
                starts.put(task.id(), start);
                start(at + 1, starts);
            }
        }
        starts.remove(task.id());
    }

    private boolean lagsKept(Map<String, Long> starts) {
        return problem.lags().stream().filter(lag -> lag.weight() == 0).allMatch(lag -> {
            long apart = starts.get(lag.to()) - starts.get(lag.from());
            return (lag.min() == null || apart >= lag.min()) && (lag.max() == null || apart <= lag.max());
        });
    }

    private boolean capacitiesKept(Map<String, Long> starts) {
        for (Resource resource : problem.resources()) {
            Map<Long, Long> used = new HashMap<>();
            for (Task task : problem.tasks()) {
                for (long t = 0; t < task.duration(); t++) {
                    long need = task.needs().getOrDefault(resource.id(), 0);
                    used.merge(starts.get(task.id()) + t, need, Long::sum);
                }
            }
            if (used.values().stream().anyMatch(count -> count > resource.capacity())) {
                return false;
            }
        }
        return true;
    }

    /** Whether people and motors can be found, by backtracking over each moment held. */
    private boolean taken(int at, int need, Map<String, Long> starts, Map<String, Boolean> held) {
        if (at == problem.tasks().size()) {
            return true;
        }
        Task task = problem.tasks().get(at);
        int needs = task.people().size() + (task.motors().isEmpty() ? 0 : 1);
        if (task.duration() == 0 || need == needs) {
            return taken(at + 1, 0, starts, held);
        }
        for (String name : candidates(task, need)) {
            long rest = need < task.people().size() ? 0 : problem.motorRest().getOrDefault(name, 0L);
            List<String> moments = new ArrayList<>();
            for (long t = 0; t < task.duration() + rest; t++) {
                moments.add(name + "@" + (starts.get(task.id()) + t));
            }
            if (moments.stream().noneMatch(held::containsKey)) {
                moments.forEach(moment -> held.put(moment, true));
                boolean found = taken(at, need + 1, starts, held);
                moments.forEach(held::remove);
                if (found) {
                    return true;
                }
            }
        }
        return false;
    }

    private List<String> candidates(Task task, int need) {
        if (need >= task.people().size()) {
            return List.copyOf(task.motors().keySet());
        }
        PersonNeed asked = task.people().get(need);
        return problem.people().stream()
                .filter(person -> person.clearances().contains(asked.clearance())
                        && (asked.person() == null || asked.person().equals(person.id())))
                .map(Person::id)
                .toList();
    }

    private void note(Map<String, Long> starts) {
        long value = goal == Goal.MAKESPAN ? Long.MIN_VALUE : Long.MAX_VALUE;
        for (Task task : problem.tasks()) {
            long end = starts.get(task.id()) + task.duration();
            if (goal == Goal.MAKESPAN) {
                value = Math.max(value, end);
            } else if (task.latestEnd() != null) {
                value = Math.min(value, task.latestEnd() - end);
            }
        }
        boolean better =
                best.isEmpty() || (goal == Goal.MAKESPAN ? value < best.getAsLong() : value > best.getAsLong());
        best = better ? OptionalLong.of(value) : best;
    }
}
