package org.skeinday.dayplan;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A part of a day that has no plan by itself. First without any search: something starts too late whatever the others
 * do, or more work must lie between two times than places or people can do there. Then by solving for the tasks whose
 * windows close next to each other, few of them first.
 */
final class Overfull {
    /** So many groups of tied tasks are looked at together, each time half of them others. */
    private static final List<Integer> PORTIONS = List.of(2, 4, 8, 16);

    private final PlanProblem problem;
    private final StartBounds reach;
    private double seconds;

    private Overfull(PlanProblem problem) {
        this.problem = problem;
        this.reach = StartBounds.of(problem);
    }

    /**
     * @param part without a plan, smaller than the day; null when none was found, which proves nothing
     * @param seconds the solver took
     */
    record Found(@Nullable PlanProblem part, double seconds) {}

    /** @param work for all searches together, counted by the solver */
    static Found of(PlanProblem problem, double work) {
        PlanProblem counted = countedPart(problem);
        Overfull overfull = new Overfull(problem);
        return new Found(counted == null ? overfull.solved(work) : counted, overfull.seconds);
    }

    /** @return a part that shows without a search to have no plan; null when none does */
    static @Nullable PlanProblem countedPart(PlanProblem problem) {
        Set<String> counted = counted(problem);
        return counted.isEmpty() ? null : problem.part(new Overfull(problem).tied(counted));
    }

    /** @return tasks that come too late or are too much together; empty when neither shows without a search */
    static Set<String> counted(PlanProblem problem) {
        StartBounds reach = StartBounds.of(problem);
        Task late = reach.tooLate(problem);
        if (late != null) {
            return Set.of(late.id());
        }
        Overload overload = Overload.of(problem, reach);
        return overload == null ? Set.of() : overload.tasks();
    }

    /** Whether {@link #counted} finds any, more quickly. */
    static boolean isCounted(PlanProblem problem) {
        StartBounds reach = StartBounds.of(problem);
        return reach.tooLate(problem) != null || Overload.isIn(problem, reach);
    }

    private @Nullable PlanProblem solved(double work) {
        List<Set<String>> groups = groups();
        double left = work;
        for (int portion : PORTIONS) {
            for (int at = 0; groups.size() > portion && at < groups.size() && left > 0; at += portion / 2) {
                Set<String> ids = new LinkedHashSet<>();
                groups.subList(at, Math.min(groups.size(), at + portion)).forEach(ids::addAll);
                PlanProblem part = problem.part(ids);
                CpSat.Answer answer = PlanModel.of(part, Relaxation.NOTHING).sat.solve(Math.min(left, work / 8));
                seconds += answer.seconds();
                left -= answer.work();
                if (answer.verdict() == CpSat.Verdict.INFEASIBLE) {
                    return part;
                }
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
                                .mapToLong(id -> reach.latest(id).orElse(Long.MAX_VALUE))
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
