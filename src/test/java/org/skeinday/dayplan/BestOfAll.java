package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** Tries every plan, with every person and motor in it: slow, plain, and no solver. */
final class BestOfAll {
    private final PlanProblem problem;
    private final long last;
    private final TreeMap<String, Long> starts = new TreeMap<>();
    private final TreeMap<String, List<String>> people = new TreeMap<>();
    private final TreeMap<String, String> motors = new TreeMap<>();
    private Figures best;

    private BestOfAll(PlanProblem problem, long last) {
        this.problem = problem;
        this.last = last;
    }

    /** @param last start that is tried @return null when there is no plan */
    static Figures of(PlanProblem problem, long last) {
        BestOfAll all = new BestOfAll(problem, last);
        all.start(0);
        return all.best;
    }

    private void start(int at) {
        if (at == problem.tasks().size()) {
            note();
            return;
        }
        Task task = problem.tasks().get(at);
        boolean holds = task.duration() > 0;
        for (long start = task.fixedStart() == null ? task.earliestStart() : task.fixedStart();
                start <= last;
                start++) {
            if (task.latestEnd() != null && start + task.duration() > task.latestEnd()) {
                return;
            }
            starts.put(task.id(), start);
            if (open(at)) {
                person(at, holds ? 0 : task.people().size(), new ArrayList<>());
            }
            starts.remove(task.id());
            if (task.isFixed()) {
                return;
            }
        }
    }

    /** Whether what is placed so far can be kept, people and motors aside. */
    private boolean open(int at) {
        List<Task> placed = problem.tasks().subList(0, at + 1);
        List<Task> bare = placed.stream()
                .map(task -> task.without(task.needs(), List.of(), false))
                .toList();
        List<Lag> between = problem.lags().stream()
                .filter(lag -> starts.containsKey(lag.from()) && starts.containsKey(lag.to()))
                .toList();
        PlanProblem part = PlanProblem.of(bare, problem.resources(), between);
        return PlanCheck.faults(part, DayPlan.ofStarts(starts)).isEmpty();
    }

    private void person(int at, int need, List<String> chosen) {
        Task task = problem.tasks().get(at);
        if (need == task.people().size()) {
            if (!chosen.isEmpty()) {
                people.put(task.id(), List.copyOf(chosen));
            }
            motor(at);
            people.remove(task.id());
            return;
        }
        for (Person person : problem.people()) {
            chosen.add(person.id());
            person(at, need + 1, chosen);
            chosen.remove(chosen.size() - 1);
        }
    }

    private void motor(int at) {
        Task task = problem.tasks().get(at);
        if (task.motors().isEmpty() || task.duration() == 0) {
            start(at + 1);
            return;
        }
        for (String motor : task.motors().keySet()) {
            motors.put(task.id(), motor);
            start(at + 1);
            motors.remove(task.id());
        }
    }

    private void note() {
        DayPlan plan = new DayPlan(starts, people, motors);
        if (PlanCheck.faults(problem, plan).isEmpty()) {
            Figures figures = Figures.of(problem, Goal.SLACK, plan);
            best = best == null || figures.betterThan(best) ? figures : best;
        }
    }
}
