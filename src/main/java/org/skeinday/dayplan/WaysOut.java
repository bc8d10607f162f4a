package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What to give up when there is no plan: each way is tried by itself on the whole problem and offered only when a plan is
 * left. When no single one will do, the least delay of windows that together will.
 */
public final class WaysOut {
    private static final double WORK_PER_CHECK = 0.2;
    private final PlanProblem problem;

    private WaysOut(PlanProblem problem) {
        this.problem = problem;
    }

    /**
     * @param conflict of {@code problem}, as {@link Outcome#conflict} tells
     * @return those preferred first, the least amount first among equals
     * @throws SolverMissing when the solver does not run here
     */
    public static List<WayOut> of(PlanProblem problem, List<Requirement> conflict) {
        WaysOut out = new WaysOut(problem);
        List<WayOut> ways = new ArrayList<>();
        conflict.forEach(one -> out.candidates(one).forEach(ways::add));
        if (ways.isEmpty()) {
            out.least(WayOut.Kind.END_LATER_TOGETHER, Loosened.What.LATEST_END, "")
                    .ifPresent(ways::add);
        }
        ways.sort(Comparator.comparing(WayOut::kind)
                .thenComparingLong(WayOut::total)
                .thenComparing(way -> way.amounts().toString()));
        return ways.stream().distinct().toList();
    }

    private List<WayOut> candidates(Requirement one) {
        String id = one.id();
        List<Optional<WayOut>> tried = new ArrayList<>();
        switch (one.kind()) {
            case TASK -> {
                tried.add(least(WayOut.Kind.START_EARLIER, Loosened.What.EARLIEST, id));
                tried.add(least(WayOut.Kind.END_LATER, Loosened.What.LATEST_END, id));
                tried.add(without(id));
            }
            case LAG -> {
                tried.add(least(WayOut.Kind.SOONER_AFTER, Loosened.What.LEAST_LAG, id));
                tried.add(least(WayOut.Kind.LATER_AFTER, Loosened.What.MOST_LAG, id));
            }
            case RESOURCE -> tried.add(least(WayOut.Kind.MORE_OF, Loosened.What.CAPACITY, id));
            case CLEARANCE -> tried.add(oneMore(id));
            case MOTORS -> {}
        }
        return tried.stream().flatMap(Optional::stream).toList();
    }

    /** The least that will do, found by the solver and then checked on the changed problem. */
    private Optional<WayOut> least(WayOut.Kind kind, Loosened.What what, String id) {
        PlanModel model = PlanModel.of(problem, new Loosened(what, id));
        if (model.give().isEmpty()) {
            return Optional.empty();
        }
        model.sat.minimise(model.give());
        CpSat.Answer answer = model.sat.solve(WORK_PER_CHECK);
        Map<String, Long> amounts = answer.found() ? model.given(answer) : Map.of();
        return amounts.isEmpty() ? Optional.empty() : checked(new WayOut(kind, amounts));
    }

    private Optional<WayOut> without(String id) {
        Set<String> gone = new LinkedHashSet<>();
        String chain = find(id).chain();
        for (Task task : problem.tasks()) {
            if (task.id().equals(id) || chain != null && chain.equals(task.chain())) {
                if (task.isFixed()) {
                    return Optional.empty();
                }
                gone.add(task.id());
            }
        }
        Map<String, Long> amounts = new LinkedHashMap<>();
        gone.forEach(task -> amounts.put(task, 1L));
        return checked(new WayOut(WayOut.Kind.LEAVE_OUT, amounts));
    }

    private Optional<WayOut> oneMore(String clearance) {
        return checked(new WayOut(WayOut.Kind.CLEAR_ONE_MORE, Map.of(clearance, 1L)));
    }

    private Task find(String id) {
        return Objects.requireNonNull(problem.byId().get(id));
    }

    private Optional<WayOut> checked(WayOut way) {
        boolean plan = PlanModel.of(taken(problem, way), Loosened.NOTHING)
                .sat
                .solve(WORK_PER_CHECK)
                .found();
        return plan ? Optional.of(way) : Optional.empty();
    }

    /** @return the problem as it is once the way is taken */
    public static PlanProblem taken(PlanProblem problem, WayOut way) {
        Map<String, Long> by = way.amounts();
        return switch (way.kind()) {
            case SOONER_AFTER, LATER_AFTER ->
                problem.withLags(problem.lags().stream()
                        .map(lag -> by.containsKey(lag.id()) ? looser(lag, way) : lag)
                        .toList());
            case START_EARLIER, END_LATER, END_LATER_TOGETHER ->
                problem.withTasks(problem.tasks().stream()
                        .map(task -> by.containsKey(task.id()) ? looser(task, way) : task)
                        .toList());
            case MORE_OF ->
                problem.withResources(problem.resources().stream()
                        .map(one -> new Resource(one.id(), one.capacity() + by.getOrDefault(one.id(), 0L)))
                        .toList());
            case CLEAR_ONE_MORE -> withOneMore(problem, by.keySet());
            case LEAVE_OUT -> without(problem, by.keySet());
        };
    }

    private static Lag looser(Lag lag, WayOut way) {
        long by = way.amounts().getOrDefault(lag.id(), 0L);
        return way.kind() == WayOut.Kind.SOONER_AFTER
                ? lag.bounded(lag.min() == null ? null : (Long) (lag.min() - by), lag.max())
                : lag.bounded(lag.min(), lag.max() == null ? null : (Long) (lag.max() + by));
    }

    private static Task looser(Task task, WayOut way) {
        long by = way.amounts().getOrDefault(task.id(), 0L);
        return way.kind() == WayOut.Kind.START_EARLIER
                ? task.within(task.earliestStart() - by, task.latestEnd())
                : task.within(task.earliest(), task.latestEnd() == null ? null : (Long) (task.latestEnd() + by));
    }

    private static PlanProblem withOneMore(PlanProblem problem, Set<String> clearances) {
        List<Person> crew = new ArrayList<>(problem.people());
        crew.add(new Person("one more", new TreeSet<>(clearances)));
        return problem.withPeople(crew, problem.together());
    }

    private static PlanProblem without(PlanProblem problem, Set<String> gone) {
        Set<String> left = new LinkedHashSet<>(problem.byId().keySet());
        left.removeAll(gone);
        return problem.part(left);
    }
}
