package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * What ties the tasks of a plan together: its lags, and the order in which they take places, people and motors. Any
 * starts that keep these ties keep the capacities, too: each unit of a resource is handed from task to task in a row
 * (a partial-order schedule; Policella, Smith, Cesta and Oddi 2004, memory).
 */
final class Arcs {
    private final List<Arc> arcs = new ArrayList<>();
    private final PlanProblem problem;
    private final DayPlan plan;
    private final Map<String, Task> tasks;

    private Arcs(PlanProblem problem, DayPlan plan) {
        this.problem = problem;
        this.plan = plan;
        this.tasks = problem.byId();
    }

    static List<Arc> of(PlanProblem problem, DayPlan plan) {
        Arcs all = new Arcs(problem, plan);
        all.ofLags();
        problem.resources().forEach(all::ofUnits);
        all.ofPeople();
        all.ofMotors();
        return all.arcs;
    }

    private void ofLags() {
        for (Lag lag : problem.lags()) {
            if (lag.isHard() && lag.min() != null) {
                arcs.add(new Arc(lag.from(), lag.to(), lag.min(), StartReason.FOLLOWS, "follows " + lag.from()));
            }
            if (lag.isHard() && lag.max() != null) {
                arcs.add(new Arc(
                        lag.to(), lag.from(), -lag.max(), StartReason.RUNS_AHEAD, "must not run ahead of " + lag.to()));
            }
        }
    }

    /** Some units of one resource, last held by one task. */
    private record Units(String last, long freeAt, long count) {}

    private void ofUnits(Resource resource) {
        List<Units> row = new ArrayList<>(List.of(new Units("", Long.MIN_VALUE, resource.capacity())));
        for (Task task : byStart()) {
            long wanted = task.needs().getOrDefault(resource.id(), 0);
            long asked = wanted;
            row.sort(Comparator.comparingLong(Units::freeAt).thenComparing(Units::last));
            while (wanted > 0 && !row.isEmpty()) {
                Units first = row.remove(0);
                long taken = Math.min(wanted, first.count());
                wanted -= taken;
                if (taken < first.count()) {
                    row.add(new Units(first.last(), first.freeAt(), first.count() - taken));
                    row.sort(Comparator.comparingLong(Units::freeAt).thenComparing(Units::last));
                }
                handOn(first.last(), task, 0, resource.id());
            }
            if (asked > 0) {
                row.add(new Units(task.id(), plan.start(task.id()) + task.duration(), asked));
            }
        }
    }

    /** Tasks that hold something, in the plan's order. */
    private List<Task> byStart() {
        return problem.tasks().stream()
                .filter(task -> task.duration() > 0)
                .sorted(Comparator.comparingLong((Task task) -> plan.start(task.id()))
                        .thenComparing(Task::id))
                .toList();
    }

    private void handOn(String last, Task next, long rest, String what) {
        if (!last.isEmpty()) {
            long length = Objects.requireNonNull(tasks.get(last)).duration() + rest;
            arcs.add(new Arc(last, next.id(), length, StartReason.HELD, "waits for " + what + ", held by " + last));
        }
    }

    private void ofPeople() {
        Map<String, String> last = new TreeMap<>();
        for (Task task : byStart()) {
            for (String person : plan.peopleOf(task.id())) {
                handOn(last.getOrDefault(person, ""), task, 0, person);
                last.put(person, task.id());
            }
        }
    }

    private void ofMotors() {
        Map<String, String> last = new TreeMap<>();
        for (Task task : byStart()) {
            String motor = plan.motors().get(task.id());
            if (motor != null) {
                handOn(last.getOrDefault(motor, ""), task, problem.restOf(motor), "motor " + motor);
                last.put(motor, task.id());
            }
        }
    }
}
