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
    /** Building the model costs, too: so bounded are the checks in number. */
    private static final double LEAST_CHARGE = 0.001;

    public Conflict {
        requirements = List.copyOf(requirements);
    }

    /** @param problem that has no plan @throws SolverMissing when the solver does not run here */
    public static Conflict of(PlanProblem problem, Effort effort) {
        PlanProblem counted = Overfull.countedPart(problem);
        return counted == null
                ? new Filter(problem, effort.proofWork() / 4).run()
                : new Filter(counted, effort.proofWork() / 4).runCounting();
    }

    private static final class Filter {
        private final PlanProblem problem;
        private final double perCheck;
        private double left;
        private boolean sure = true;
        private boolean counting;
        private double seconds;

        /** @param work for all checks together, counted by the solver */
        Filter(PlanProblem problem, double work) {
            this.problem = problem;
            this.left = work;
            this.perCheck = work / 8;
        }

        Conflict run() {
            return new Conflict(filter(chains(oneHolder(all(problem)))), sure, seconds);
        }

        /** Counting leaves little, quickly; only that is searched. */
        Conflict runCounting() {
            counting = true;
            List<Requirement> counted = filter(chains(oneHolder(all(problem))));
            counting = false;
            return new Conflict(filter(counted), sure, seconds);
        }

        /** One resource or clearance mostly conflicts by itself: then the others need not be looked at. */
        private List<Requirement> oneHolder(List<Requirement> all) {
            List<Requirement> bare = all.stream().filter(one -> !one.isHolder()).toList();
            if (!bare.isEmpty() && !canBeKept(only(problem, bare), false)) {
                return bare;
            }
            for (Requirement holder : all) {
                if (holder.isHolder()) {
                    List<Requirement> with = new ArrayList<>(bare);
                    with.add(holder);
                    if (!canBeKept(only(problem, with), false)) {
                        return with;
                    }
                }
            }
            return all;
        }

        /** Whole attempts first, in shrinking portions: half an attempt has no window and conflicts with nothing. */
        private List<Requirement> chains(List<Requirement> all) {
            List<String> kept = all.stream()
                    .map(this::chain)
                    .distinct()
                    .filter(c -> !c.isEmpty())
                    .toList();
            List<Requirement> left = all;
            for (int portion = kept.size() / 2; portion >= 1; portion /= 2) {
                for (int at = 0; at < kept.size(); ) {
                    Set<String> out = Set.copyOf(kept.subList(at, Math.min(kept.size(), at + portion)));
                    List<Requirement> fewer = left.stream()
                            .filter(one -> !out.contains(chain(one)))
                            .toList();
                    PlanProblem smaller = only(problem, fewer);
                    if (smaller.tasks().isEmpty() || canBeKept(smaller, false)) {
                        at += portion;
                    } else {
                        Set<Requirement> there = new HashSet<>(all(smaller));
                        left = fewer.stream().filter(there::contains).toList();
                        kept = kept.stream()
                                .filter(chain -> !out.contains(chain))
                                .toList();
                    }
                }
            }
            return left;
        }

        private String chain(Requirement one) {
            Task task = one.kind() == Requirement.Kind.TASK ? problem.byId().get(one.id()) : null;
            return task == null || task.chain() == null ? "" : task.chain();
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
            if (counting) {
                return !Overfull.isCounted(smaller);
            }
            if (left <= 0) {
                sure &= !last;
                return true;
            }
            CpSat.Answer answer = PlanModel.of(smaller, Relaxation.NOTHING).sat.solve(Math.min(left, perCheck));
            seconds += answer.seconds();
            left -= Math.max(answer.work(), LEAST_CHARGE);
            sure &= !last || answer.verdict() != CpSat.Verdict.UNKNOWN;
            return answer.verdict() != CpSat.Verdict.INFEASIBLE;
        }
    }

    /** @return the problem's conflict where a part of it is proven to have no plan; empty where none is found */
    static Optional<Conflict> ofPart(PlanProblem problem, Effort effort) {
        Overfull.Found found = Overfull.of(problem, effort.proofWork() / 4);
        return Optional.ofNullable(found.part()).map(part -> {
            Conflict conflict = of(part, effort);
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
