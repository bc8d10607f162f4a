package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/**
 * A part of a day that has no plan by itself, looked for where the search over the whole day ends without an answer:
 * first by counting (more work must lie between two times than places or people can do there), then by solving for the
 * tasks whose windows close next to each other.
 */
final class Overfull {
    /** Chains that are looked at together, and the work for each portion. */
    private static final int PORTION = 16;

    private static final double WORK_PER_PORTION = 0.04;

    private final PlanProblem problem;
    private final Reach reach;
    private double seconds;

    private Overfull(PlanProblem problem) {
        this.problem = problem;
        this.reach = Reach.of(problem);
    }

    /**
     * @param part without a plan, smaller than the day; null when none was found, which proves nothing
     * @param seconds the solver took
     */
    record Found(@Nullable PlanProblem part, double seconds) {}

    static Found of(PlanProblem problem) {
        PlanProblem counted = countedPart(problem);
        Overfull overfull = new Overfull(problem);
        return new Found(counted == null ? overfull.solved() : counted, overfull.seconds);
    }

    /** @return a part that counting shows to have no plan; null when it shows none */
    static @Nullable PlanProblem countedPart(PlanProblem problem) {
        Overfull overfull = new Overfull(problem);
        Set<String> counted = overfull.counted();
        return counted.isEmpty() ? null : problem.part(overfull.tied(counted));
    }

    /** @return tasks that are too much together; empty when counting finds none */
    static Set<String> counted(PlanProblem problem) {
        return new Overfull(problem).counted();
    }

    private Set<String> counted() {
        for (Resource resource : problem.resources()) {
            Set<String> found = tooMuch(held(task -> task.needs().getOrDefault(resource.id(), 0)), resource.capacity());
            if (!found.isEmpty()) {
                return found;
            }
        }
        for (String clearance : PersonNeed.clearances(problem.tasks())) {
            long able = problem.people().stream()
                    .filter(person -> person.clearances().contains(clearance))
                    .count();
            Set<String> found = tooMuch(
                    held(task -> (int) task.people().stream()
                            .filter(need -> clearance.equals(need.clearance()))
                            .count()),
                    able);
            if (!found.isEmpty()) {
                return found;
            }
        }
        return Set.of();
    }

    /** A task inside its reach: it starts from {@code earliest} to {@code latest}. */
    private record Held(String task, long earliest, long latest, long duration, long amount) {
        /** The least that it holds between two times, however it is placed. */
        long least(long from, long until) {
            long early = Math.max(0, earliest + duration - from);
            long late = Math.max(0, until - latest);
            return amount * Math.min(Math.min(early, late), Math.min(duration, until - from));
        }
    }

    private List<Held> held(ToIntFunction<Task> amount) {
        List<Held> held = new ArrayList<>();
        for (Task task : problem.tasks()) {
            Long latest = reach.latest().get(task.id());
            int wanted = amount.applyAsInt(task);
            if (latest != null && wanted > 0 && task.duration() > 0) {
                long earliest = Objects.requireNonNull(reach.earliest().get(task.id()));
                held.add(new Held(task.id(), earliest, latest, task.duration(), wanted));
            }
        }
        return held;
    }

    private static Set<String> tooMuch(List<Held> held, long capacity) {
        long[] from = held.stream().mapToLong(Held::earliest).distinct().toArray();
        long[] until = held.stream()
                .mapToLong(one -> one.latest() + one.duration())
                .distinct()
                .toArray();
        Set<String> fewest = Set.of();
        for (long start : from) {
            for (long end : until) {
                if (end > start && sum(held, start, end) > capacity * (end - start)) {
                    Set<String> tasks = new TreeSet<>();
                    held.stream().filter(one -> one.least(start, end) > 0).forEach(one -> tasks.add(one.task()));
                    fewest = fewest.isEmpty() || tasks.size() < fewest.size() ? tasks : fewest;
                }
            }
        }
        return fewest;
    }

    private static long sum(List<Held> held, long from, long until) {
        long sum = 0;
        for (Held one : held) {
            sum += one.least(from, until);
        }
        return sum;
    }

    private @Nullable PlanProblem solved() {
        List<Set<String>> groups = groups();
        for (int at = 0; groups.size() > PORTION && at < groups.size(); at += PORTION / 2) {
            Set<String> ids = new LinkedHashSet<>();
            groups.subList(at, Math.min(groups.size(), at + PORTION)).forEach(ids::addAll);
            PlanProblem part = problem.part(ids);
            CpSat.Answer answer = PlanModel.of(part, Loosened.NOTHING).sat.solve(WORK_PER_PORTION);
            seconds += answer.seconds();
            if (answer.verdict() == CpSat.Verdict.INFEASIBLE) {
                return part;
            }
        }
        return null;
    }

    /** Tasks that hard lags tie to each other, those first whose windows close first. */
    private List<Set<String>> groups() {
        Map<String, Set<String>> byTask = new TreeMap<>();
        problem.tasks().forEach(task -> byTask.put(task.id(), new LinkedHashSet<>(Set.of(task.id()))));
        for (Lag lag : problem.lags()) {
            Set<String> one = Objects.requireNonNull(byTask.get(lag.from()));
            Set<String> other = Objects.requireNonNull(byTask.get(lag.to()));
            if (lag.isHard() && one != other) {
                one.addAll(other);
                other.forEach(id -> byTask.put(id, one));
            }
        }
        return new LinkedHashSet<>(byTask.values())
                .stream()
                        .sorted(Comparator.comparingLong((Set<String> ids) -> ids.stream()
                                .mapToLong(id -> reach.latest().getOrDefault(id, Long.MAX_VALUE))
                                .min()
                                .orElse(Long.MAX_VALUE)))
                        .toList();
    }

    private Set<String> tied(Set<String> tasks) {
        Set<String> all = new LinkedHashSet<>();
        groups().stream().filter(ids -> ids.stream().anyMatch(tasks::contains)).forEach(all::addAll);
        return all;
    }
}
