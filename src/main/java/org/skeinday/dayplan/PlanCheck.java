package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Whether a plan keeps what a problem asks, found out without any solver. */
public final class PlanCheck {
    private final PlanProblem problem;
    private final DayPlan plan;
    private final List<String> faults = new ArrayList<>();

    private PlanCheck(PlanProblem problem, DayPlan plan) {
        this.problem = problem;
        this.plan = plan;
    }

    /** @return what is broken, in words; empty when all is kept */
    public static List<String> faults(PlanProblem problem, DayPlan plan) {
        PlanCheck check = new PlanCheck(problem, plan);
        for (Task task : problem.tasks()) {
            if (!plan.starts().containsKey(task.id())) {
                check.faults.add(task.id() + " has no start");
            }
        }
        if (check.faults.isEmpty()) {
            problem.tasks().forEach(check::window);
            problem.lags().stream().filter(Lag::isHard).forEach(check::lag);
            problem.resources().forEach(check::capacity);
            problem.tasks().forEach(check::crew);
            check.oneAtATime(check.byPerson(), "person");
            check.oneAtATime(check.byMotor(), "motor");
        }
        return check.faults;
    }

    private void window(Task task) {
        long start = plan.start(task.id());
        if (start < task.earliestStart() && (task.earliest() != null || !task.isFixed())) {
            faults.add(task.id() + " starts at " + start + ", before " + task.earliestStart());
        }
        if (task.latestEnd() != null && start + task.duration() > task.latestEnd()) {
            faults.add(task.id() + " ends at " + (start + task.duration()) + ", after " + task.latestEnd());
        }
        if (task.fixedStart() != null && start != task.fixedStart()) {
            faults.add(task.id() + " is fixed at " + task.fixedStart() + ", but starts at " + start);
        }
    }

    private void lag(Lag lag) {
        long apart = plan.start(lag.to()) - plan.start(lag.from());
        if (lag.missed(apart) > 0) {
            faults.add(lag.to() + " starts " + apart + " after " + lag.from() + ", which breaks " + lag.id());
        }
    }

    private void capacity(Resource resource) {
        List<Held> users = new ArrayList<>();
        for (Task task : problem.tasks()) {
            int need = task.needs().getOrDefault(resource.id(), 0);
            if (task.duration() > 0 && need > 0) {
                long start = plan.start(task.id());
                users.add(new Held(task.id(), start, start + task.duration(), need));
            }
        }
        for (Held at : users) {
            long used = users.stream()
                    .filter(other -> other.from() <= at.from() && at.from() < other.until())
                    .mapToLong(Held::amount)
                    .sum();
            if (used > resource.capacity()) {
                faults.add(resource.id() + " is needed " + used + " times at " + at.from() + ", but there are "
                        + resource.capacity());
            }
        }
    }

    private void crew(Task task) {
        if (task.duration() == 0) {
            return;
        }
        List<String> there = plan.peopleOf(task.id());
        if (there.size() != task.people().size() || new HashSet<>(there).size() != there.size()) {
            faults.add(task.id() + " needs " + task.people().size() + " different persons, but has " + there);
            return;
        }
        for (int i = 0; i < there.size(); i++) {
            String id = there.get(i);
            PersonNeed need = task.people().get(i);
            if (problem.people().stream().noneMatch(person -> person.id().equals(id) && need.mayBe(person))) {
                String what = need.clearance() == null ? "what " + need.person() + " does" : need.clearance();
                faults.add(id + " may not do " + what + " in " + task.id());
            }
        }
        String motor = plan.motors().get(task.id());
        if (!task.motors().isEmpty() && (motor == null || !task.motors().containsKey(motor))) {
            faults.add(task.id() + " takes one of " + task.motors().keySet() + ", but has " + motor);
        }
    }

    /** What a task holds, from its start until before its end. */
    private record Held(String task, long from, long until, long amount) {}

    private Map<String, List<Held>> byPerson() {
        Map<String, List<Held>> held = new TreeMap<>();
        for (Task task : problem.tasks()) {
            plan.peopleOf(task.id()).forEach(id -> hold(held, id, task, 0));
        }
        return held;
    }

    private Map<String, List<Held>> byMotor() {
        Map<String, List<Held>> held = new TreeMap<>();
        for (Task task : problem.tasks()) {
            String motor = plan.motors().get(task.id());
            if (motor != null) {
                hold(held, motor, task, problem.restOf(motor));
            }
        }
        return held;
    }

    private void hold(Map<String, List<Held>> held, String id, Task task, long rest) {
        if (task.duration() > 0) {
            long start = plan.start(task.id());
            held.computeIfAbsent(id, none -> new ArrayList<>())
                    .add(new Held(task.id(), start, start + task.duration() + rest, 1));
        }
    }

    private void oneAtATime(Map<String, List<Held>> held, String what) {
        held.forEach((id, all) -> {
            all.sort(Comparator.comparingLong(Held::from));
            for (int i = 1; i < all.size(); i++) {
                if (all.get(i).from() < all.get(i - 1).until()) {
                    faults.add("The " + what + " " + id + " is in "
                            + all.get(i - 1).task() + " and " + all.get(i).task() + " at once");
                }
            }
        });
    }
}
