package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A problem in the solver's terms. People of the same clearances are counted here, not told apart: who does what is
 * settled once the starts are known ({@link Crewing}), which is always possible then.
 */
final class PlanModel {
    final CpSat sat;
    private final PlanProblem problem;
    private final Relaxation loosened;
    private final Map<String, Integer> starts = new LinkedHashMap<>();
    private final Map<String, Map<String, Integer>> motors = new LinkedHashMap<>();
    private final Map<String, List<Integer>> motorIntervals = new TreeMap<>();
    private final Sum give = new Sum();
    private final Map<String, Integer> givers = new LinkedHashMap<>();
    private final long horizon;

    private PlanModel(PlanProblem problem, Relaxation loosened) {
        this.sat = CpSat.model();
        this.problem = problem;
        this.loosened = loosened;
        this.horizon = Horizon.of(problem);
    }

    static PlanModel of(PlanProblem problem, Relaxation loosened) {
        PlanModel model = new PlanModel(problem, loosened);
        problem.tasks().forEach(model::task);
        problem.lags().stream().filter(Lag::isHard).forEach(model::lag);
        problem.resources().forEach(model::resource);
        new CrewGroups(problem).into(model);
        WorthTaking.of(problem).forEach(model::motor);
        model.motorIntervals.values().forEach(model.sat::oneAtATime);
        return model;
    }

    private void task(Task task) {
        int start = sat.variable(Math.min(Horizon.first(problem), 0), horizon);
        starts.put(task.id(), start);
        sat.atLeast(
                giving(Sum.of(start), Relaxation.What.EARLIEST, task.id(), Math.max(0, task.earliestStart())),
                task.earliestStart());
        if (task.latestEnd() != null) {
            sat.atMost(
                    taking(Sum.of(start), Relaxation.What.LATEST_END, task.id()), task.latestEnd() - task.duration());
        }
        if (task.fixedStart() != null) {
            sat.atLeast(Sum.of(start), task.fixedStart());
            sat.atMost(Sum.of(start), task.fixedStart());
        }
    }

    private void lag(Lag lag) {
        if (lag.min() != null) {
            sat.atLeast(giving(between(lag), Relaxation.What.LEAST_LAG, lag.id(), horizon), lag.min());
        }
        if (lag.max() != null) {
            sat.atMost(taking(between(lag), Relaxation.What.MOST_LAG, lag.id()), lag.max());
        }
    }

    /** From the start of the one task to that of the other. */
    Sum between(Lag lag) {
        return Sum.of(start(lag.to())).plus(start(lag.from()), -1);
    }

    private void resource(Resource resource) {
        List<Integer> intervals = new ArrayList<>();
        List<Long> demands = new ArrayList<>();
        for (Task task : problem.tasks()) {
            int need = task.needs().getOrDefault(resource.id(), 0);
            if (need > 0 && task.duration() > 0) {
                intervals.add(sat.interval(start(task.id()), task.duration()));
                demands.add((long) need);
            }
        }
        if (!intervals.isEmpty()) {
            long all = demands.stream().mapToLong(Long::longValue).sum();
            Integer extra = giver(Relaxation.What.CAPACITY, resource.id(), all);
            sat.capacity(intervals, demands, resource.capacity(), extra == null ? List.of() : List.of(extra));
        }
    }

    private void motor(Task task, Set<String> worthTaking) {
        Map<String, Integer> taken = new LinkedHashMap<>();
        for (String motor : worthTaking) {
            int choice = sat.choice();
            taken.put(motor, choice);
            motorIntervals
                    .computeIfAbsent(motor, none -> new ArrayList<>())
                    .add(sat.interval(start(task.id()), task.duration() + problem.restOf(motor), choice));
        }
        sat.exactlyOne(List.copyOf(taken.values()));
        motors.put(task.id(), taken);
    }

    private @Nullable Integer giver(Relaxation.What what, String id, long most) {
        if (!loosened.covers(what, id)) {
            return null;
        }
        int giver = sat.variable(0, most);
        give.plus(giver, 1);
        givers.put(id, giver);
        return giver;
    }

    private Sum giving(Sum sum, Relaxation.What what, String id, long most) {
        Integer giver = giver(what, id, most);
        return giver == null ? sum : sum.plus(giver, 1);
    }

    private Sum taking(Sum sum, Relaxation.What what, String id) {
        Integer giver = giver(what, id, 2 * horizon);
        return giver == null ? sum : sum.plus(giver, -1);
    }

    int start(String task) {
        return Objects.requireNonNull(starts.get(task));
    }

    /** By task. */
    Map<String, Integer> starts() {
        return starts;
    }

    /** By task, for each motor that it may take: whether it does. */
    Map<String, Map<String, Integer>> motors() {
        return motors;
    }

    /** No start is later. */
    long horizon() {
        return horizon;
    }

    /** What can be made small. */
    PlanCosts costs() {
        return new PlanCosts(this, problem);
    }

    /** All that gives, together. */
    Sum give() {
        return give;
    }

    /** @return by how much each gives, those that do */
    Map<String, Long> given(CpSat.Answer answer) {
        Map<String, Long> amounts = new LinkedHashMap<>();
        givers.forEach((id, giver) -> {
            long amount = answer.values().get(giver);
            if (amount > 0) {
                amounts.put(id, amount);
            }
        });
        return amounts;
    }

    /** From now on the cost is no more than was reached; nothing where it has no variables. */
    void keep(Sum cost, long reached) {
        if (!cost.isEmpty()) {
            sat.atMost(cost, reached);
        }
    }

    /** Where a plan has them, with their motors, all but those that move stay. */
    void hold(DayPlan plan, Set<String> moving) {
        starts.forEach((id, start) -> {
            if (!moving.contains(id)) {
                sat.atLeast(Sum.of(start), plan.start(id));
                sat.atMost(Sum.of(start), plan.start(id));
            }
        });
        motors.forEach((id, taken) -> {
            taken.forEach((motor, choice) -> {
                if (!moving.contains(id) && motor.equals(plan.motors().get(id))) {
                    sat.atLeast(Sum.of(choice), 1);
                }
            });
        });
    }

    void lookFirstAt(DayPlan plan) {
        sat.forgetHints();
        starts.forEach((id, start) -> {
            Long before = plan.starts().get(id);
            if (before != null) {
                sat.hint(start, before);
            }
        });
        motors.forEach((id, taken) -> {
            String before = plan.motors().get(id);
            if (before != null) {
                taken.forEach((motor, choice) -> sat.hint(choice, motor.equals(before) ? 1 : 0));
            }
        });
    }

    /** Nobody is in it yet. */
    DayPlan read(CpSat.Answer answer) {
        var when = new TreeMap<String, Long>();
        starts.forEach((id, start) -> when.put(id, answer.values().get(start)));
        var which = new TreeMap<String, String>();
        motors.forEach((id, taken) -> taken.forEach((motor, choice) -> {
            if (answer.values().get(choice) == 1) {
                which.put(id, motor);
            }
        }));
        return new DayPlan(when, new TreeMap<>(), which);
    }
}
