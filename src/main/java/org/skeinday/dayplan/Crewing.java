package org.skeinday.dayplan;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Gives a plan its people: few hand-overs first, then little change. Starts move for that where it costs none of the
 * goals before: all of a small problem, of a large one the chains that have hand-overs.
 */
final class Crewing {
    /** Up to so many choices of a person for a task all starts may move. */
    private static final int SMALL = 200;

    /** Tasks of one bundle that go to somebody else for one that cannot stay. */
    private static final int MOST_OTHERS = 2;

    private final PlanProblem problem;
    private final Goal goal;
    private final double work;
    private double seconds;

    /** @param work for each search, counted by the solver */
    Crewing(PlanProblem problem, Goal goal, double work) {
        this.problem = problem;
        this.goal = goal;
        this.work = work;
    }

    /** The solver took, in all. */
    double seconds() {
        return seconds;
    }

    /** @param when keeps the counts of {@link CrewGroups}, so that somebody is found for everything */
    DayPlan crew(DayPlan when) {
        if (problem.tasks().stream().allMatch(task -> task.people().isEmpty())) {
            return when;
        }
        DayPlan dealt = dealt(when);
        if (figures(dealt).handOvers() == 0 && fewOthers(dealt)) {
            return dealt;
        }
        return fewer(dealt);
    }

    private DayPlan dealt(DayPlan when) {
        DayPlan inForce = problem.inForce();
        if (inForce != null) {
            DayPlan asBefore = when.withPeople(inForce.people());
            if (PlanCheck.faults(problem, asBefore).isEmpty()
                    && figures(asBefore).handOvers() == 0) {
                return asBefore;
            }
        }
        Map<String, List<String>> byTurn = CrewByTurn.of(problem, when);
        return byTurn == null ? anyhow(when) : when.withPeople(new TreeMap<>(byTurn));
    }

    /** Hardly anybody new beyond those whose tasks come to lie at once: a search would find next to nothing. */
    private boolean fewOthers(DayPlan plan) {
        DayPlan inForce = problem.inForce();
        if (inForce == null) {
            return true;
        }
        long others = inForce.people().entrySet().stream()
                .filter(task -> plan.people().containsKey(task.getKey()))
                .filter(task -> !task.getValue().equals(plan.peopleOf(task.getKey())))
                .count();
        int atOnce = others == 0
                ? 0
                : PlanCheck.faults(problem, plan.withPeople(inForce.people())).size();
        return isLarge() ? others <= MOST_OTHERS * atOnce : others == 0;
    }

    private DayPlan anyhow(DayPlan when) {
        CrewModel model = CrewModel.of(problem, when, Set.of());
        CpSat.Answer answer = solve(model.when, Effort.UNTIL_SURE);
        if (!answer.found()) {
            throw new IllegalStateException(
                    "Somebody must be found for every task, but the answer was " + answer.verdict());
        }
        return model.read(answer);
    }

    /** Each goal is searched for among the plans that are as good in all before. */
    private DayPlan fewer(DayPlan dealt) {
        Figures reached = figures(dealt);
        CrewModel model = CrewModel.of(problem, dealt, moving(dealt));
        PlanModel when = model.when;
        when.keep(when.costs().headline(goal), reached.headline());
        when.keep(when.costs().preferences(), reached.preferences());
        when.keep(when.costs().motorDislikes(), reached.motors());
        DayPlan plan = better(model, model.handOvers(), dealt);
        return better(model, model.change(), plan);
    }

    private DayPlan better(CrewModel model, Sum cost, DayPlan before) {
        if (cost.isEmpty()) {
            return before;
        }
        model.lookFirstAt(before);
        model.when.sat.minimise(cost);
        CpSat.Answer answer = solve(model.when, work);
        DayPlan found = answer.found() ? model.read(answer) : before;
        DayPlan plan = figures(found).betterThan(figures(before)) ? found : before;
        model.when.sat.atMost(cost, answer.found() ? answer.objective() : Long.MAX_VALUE);
        return plan;
    }

    private Set<String> moving(DayPlan plan) {
        if (!isLarge()) {
            return problem.byId().keySet();
        }
        Set<String> chains = new HashSet<>();
        Map<String, Task> tasks = problem.byId();
        Figures.handedOver(problem, plan).forEach(pair -> {
            chains.add(chain(tasks, pair.first()));
            chains.add(chain(tasks, pair.second()));
        });
        return tasks.keySet().stream()
                .filter(id -> chains.contains(chain(tasks, id)))
                .collect(Collectors.toSet());
    }

    private boolean isLarge() {
        long choices = problem.tasks().stream()
                .flatMap(task -> task.people().stream())
                .mapToLong(need -> problem.people().stream().filter(need::mayBe).count())
                .sum();
        return choices > SMALL;
    }

    private static String chain(Map<String, Task> tasks, String id) {
        Task task = tasks.get(id);
        return task == null || task.chain() == null ? id : task.chain();
    }

    private Figures figures(DayPlan plan) {
        return Figures.of(problem, goal, plan);
    }

    private CpSat.Answer solve(PlanModel model, double most) {
        CpSat.Answer answer = model.sat.solve(most);
        seconds += answer.seconds();
        return answer;
    }
}
