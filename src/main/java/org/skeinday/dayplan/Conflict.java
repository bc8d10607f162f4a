package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Requirements that cannot be kept together, of which none is needless: without any one of them the others can be. Found
 * by leaving out (a deletion filter; Chinneck and Dravnieks 1991, memory), in shrinking portions.
 *
 * @param requirements tasks first, then lags between them, then what they hold
 * @param irreducible false when some check ended without an answer, so that one may be needless
 * @param seconds the solver took
 */
public record Conflict(List<Requirement> requirements, boolean irreducible, double seconds) {
    static final Conflict NONE = new Conflict(List.of(), true, 0);
    private static final double WORK_PER_CHECK = 0.1;
    /** Checks without an answer after which the rest stays as it is. */
    private static final int MOST_OPEN = 4;

    public Conflict {
        requirements = List.copyOf(requirements);
    }

    /** @param problem that has no plan @throws SolverMissing when the solver does not run here */
    public static Conflict of(PlanProblem problem) {
        PlanProblem counted = Overfull.countedPart(problem);
        return counted == null ? new Filter(problem).run() : new Filter(counted).runCounting();
    }

    private static final class Filter {
        private final PlanProblem problem;
        private boolean sure = true;
        private int open;
        private boolean counting;
        private double seconds;

        Filter(PlanProblem problem) {
            this.problem = problem;
        }

        Conflict run() {
            return new Conflict(filter(all(problem)), sure, seconds);
        }

        /** Counting leaves little, quickly; only that is searched. */
        Conflict runCounting() {
            counting = true;
            List<Requirement> counted = filter(all(problem));
            counting = false;
            return new Conflict(filter(counted), sure, seconds);
        }

        private List<Requirement> filter(List<Requirement> all) {
            List<Requirement> kept = all;
            for (int portion = Math.max(1, kept.size() / 2); portion >= 1; portion /= 2) {
                kept = pass(kept, portion);
            }
            return kept;
        }

        private List<Requirement> pass(List<Requirement> all, int portion) {
            List<Requirement> kept = all;
            int at = 0;
            while (at < kept.size()) {
                int until = Math.min(kept.size(), at + portion);
                List<Requirement> fewer = new ArrayList<>(kept.subList(0, at));
                fewer.addAll(kept.subList(until, kept.size()));
                PlanProblem smaller = only(problem, fewer);
                if (fewer.isEmpty() || canBeKept(smaller, portion == 1)) {
                    at = until;
                } else {
                    // A lag falls with its task, so that the rest never names a task that is gone.
                    Set<Requirement> left = new HashSet<>(all(smaller));
                    int before = (int)
                            kept.subList(0, at).stream().filter(left::contains).count();
                    kept = fewer.stream().filter(left::contains).toList();
                    at = before;
                }
            }
            return kept;
        }

        private boolean canBeKept(PlanProblem smaller, boolean last) {
            if (!Overfull.counted(smaller).isEmpty()) {
                return false;
            }
            if (counting) {
                return true;
            }
            if (open >= MOST_OPEN) {
                sure = false;
                return true;
            }
            CpSat.Answer answer = PlanModel.of(smaller, Loosened.NOTHING).sat.solve(WORK_PER_CHECK);
            seconds += answer.seconds();
            open += answer.verdict() == CpSat.Verdict.UNKNOWN ? 1 : 0;
            sure &= !last || answer.verdict() != CpSat.Verdict.UNKNOWN;
            return answer.verdict() != CpSat.Verdict.INFEASIBLE;
        }
    }

    /** @return the problem's conflict where a part of it is proven to have no plan; empty where none is found */
    static Optional<Conflict> ofPart(PlanProblem problem) {
        Overfull.Found found = Overfull.of(problem);
        return Optional.ofNullable(found.part()).map(part -> {
            Conflict conflict = of(part);
            return new Conflict(conflict.requirements(), conflict.irreducible(), conflict.seconds() + found.seconds());
        });
    }

    static List<Requirement> all(PlanProblem problem) {
        List<Requirement> all = new ArrayList<>();
        problem.tasks().forEach(task -> all.add(new Requirement(Requirement.Kind.TASK, task.id())));
        problem.lags().stream()
                .filter(Lag::isHard)
                .forEach(lag -> all.add(new Requirement(Requirement.Kind.LAG, lag.id())));
        problem.resources().forEach(one -> all.add(new Requirement(Requirement.Kind.RESOURCE, one.id())));
        PersonNeed.clearances(problem.tasks())
                .forEach(one -> all.add(new Requirement(Requirement.Kind.CLEARANCE, one)));
        if (problem.tasks().stream().anyMatch(task -> !task.motors().isEmpty())) {
            all.add(new Requirement(Requirement.Kind.MOTORS, "motors"));
        }
        return all;
    }

    /** The problem with nothing but these requirements. */
    static PlanProblem only(PlanProblem problem, List<Requirement> kept) {
        Set<Requirement> those = new HashSet<>(kept);
        List<Task> tasks = new ArrayList<>();
        for (Task task : problem.tasks()) {
            if (those.contains(new Requirement(Requirement.Kind.TASK, task.id()))) {
                tasks.add(bare(task, those));
            }
        }
        Set<String> there = new HashSet<>();
        tasks.forEach(task -> there.add(task.id()));
        List<Lag> lags = problem.lags().stream()
                .filter(lag -> those.contains(new Requirement(Requirement.Kind.LAG, lag.id()))
                        && there.contains(lag.from())
                        && there.contains(lag.to()))
                .toList();
        List<Resource> resources = problem.resources().stream()
                .filter(one -> those.contains(new Requirement(Requirement.Kind.RESOURCE, one.id())))
                .toList();
        return new PlanProblem(tasks, resources, lags, problem.people(), problem.motorRest(), List.of(), null);
    }

    private static Task bare(Task task, Set<Requirement> those) {
        var needs = new TreeMap<>(task.needs());
        needs.keySet().removeIf(need -> !those.contains(new Requirement(Requirement.Kind.RESOURCE, need)));
        List<PersonNeed> people = task.people().stream()
                .filter(need -> need.clearance() == null
                        || those.contains(new Requirement(Requirement.Kind.CLEARANCE, need.clearance())))
                .toList();
        return task.without(needs, people, those.contains(new Requirement(Requirement.Kind.MOTORS, "motors")));
    }
}
