package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
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
    /** The solver needs a little even to say that it has no time. */
    private static final double LEAST_WORK = 1e-4;

    /** Building the model costs, too: so bounded are the checks in number. */
    private static final double LEAST_CHARGE = 0.002;

    private final PlanProblem problem;
    private final double perCheck;
    /** Nothing begins before: what may begin then cannot be asked to begin earlier. */
    private final long first;

    private double left;
    private final Set<Set<String>> wholes = new HashSet<>();

    private WaysOut(PlanProblem problem, double work) {
        this.problem = problem;
        this.left = work;
        this.perCheck = work / 4;
        this.first = problem.tasks().stream()
                .filter(task -> !task.isFixed())
                .mapToLong(Task::earliestStart)
                .min()
                .orElse(0);
    }

    /**
     * @param conflict of {@code problem}, as {@link Outcome#conflict} tells
     * @param effort of which half the work for a proof is spent on all checks together: what is not reached is not offered
     * @return those preferred first, the least amount first among equals
     * @throws SolverMissing when the solver does not run here
     */
    public static List<WayOut> of(PlanProblem problem, List<Requirement> conflict, Effort effort) {
        WaysOut out = new WaysOut(problem, effort.proofWork() / 2);
        List<WayOut> ways = new ArrayList<>();
        // What is held first: it is few, and one more of it often does for a whole day.
        conflict.stream().filter(Requirement::isHolder).forEach(one -> ways.addAll(out.candidates(one)));
        if (out.othersFit(conflict)) {
            conflict.stream()
                    .filter(one -> !one.isHolder())
                    .sorted(Comparator.comparing(one -> one.kind() != Requirement.Kind.TASK))
                    .forEach(one -> ways.addAll(out.candidates(one)));
        }
        if (ways.isEmpty()) {
            out.left = effort.proofWork() / 4;
            out.least(WayOut.Kind.END_LATER_TOGETHER, Relaxation.What.LATEST_END, "")
                    .ifPresent(ways::add);
        }
        ways.sort(Comparator.comparing(WayOut::kind)
                .thenComparingLong(WayOut::total)
                .thenComparing(way -> way.amounts().toString()));
        return ways.stream().distinct().toList();
    }

    /** Where something else conflicts, too, no single task or lag will do. */
    private boolean othersFit(List<Requirement> conflict) {
        Set<String> others = new LinkedHashSet<>(problem.byId().keySet());
        conflict.stream().filter(one -> one.kind() == Requirement.Kind.TASK).forEach(one -> others.remove(one.id()));
        return !Overfull.isCounted(problem.part(others));
    }

    private List<WayOut> candidates(Requirement one) {
        String id = one.id();
        List<Optional<WayOut>> tried = new ArrayList<>();
        switch (one.kind()) {
            case TASK -> {
                tried.add(least(WayOut.Kind.END_LATER, Relaxation.What.LATEST_END, id));
                tried.add(without(id));
                if (find(id).earliestStart() > first) {
                    tried.add(least(WayOut.Kind.START_EARLIER, Relaxation.What.EARLIEST, id));
                }
            }
            case LAG -> {
                if (!follows(id)) {
                    tried.add(least(WayOut.Kind.SOONER_AFTER, Relaxation.What.LEAST_LAG, id));
                }
                tried.add(least(WayOut.Kind.LATER_AFTER, Relaxation.What.MOST_LAG, id));
            }
            case RESOURCE -> tried.add(least(WayOut.Kind.MORE_OF, Relaxation.What.CAPACITY, id));
            case CLEARANCE -> tried.add(oneMore(id));
            case MOTORS -> {}
        }
        return tried.stream().flatMap(Optional::stream).toList();
    }

    /** The least that will do, found by the solver and then checked on the changed problem. */
    private Optional<WayOut> least(WayOut.Kind kind, Relaxation.What what, String id) {
        if (left <= 0) {
            return Optional.empty();
        }
        PlanModel model = PlanModel.of(problem, new Relaxation(what, id));
        if (model.give().isEmpty()) {
            return Optional.empty();
        }
        model.sat.minimise(model.give());
        CpSat.Answer answer = solve(model);
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
        if (left <= 0 || !wholes.add(gone)) {
            return Optional.empty();
        }
        Map<String, Long> amounts = new LinkedHashMap<>();
        gone.forEach(task -> amounts.put(task, 1L));
        return checked(new WayOut(WayOut.Kind.LEAVE_OUT, amounts));
    }

    private Optional<WayOut> oneMore(String clearance) {
        return checked(new WayOut(WayOut.Kind.CLEAR_ONE_MORE, Map.of(clearance, 1L)));
    }

    /** What begins when the other is done cannot begin sooner, whoever asks. */
    private boolean follows(String lagId) {
        return problem.lags().stream()
                .filter(lag -> lag.id().equals(lagId))
                .anyMatch(lag ->
                        lag.min() != null && lag.min() == find(lag.from()).duration());
    }

    private Task find(String id) {
        return Objects.requireNonNull(problem.byId().get(id));
    }

    private Optional<WayOut> checked(WayOut way) {
        PlanProblem after = taken(problem, way);
        boolean plan = !Overfull.isCounted(after)
                && solve(PlanModel.of(after, Relaxation.NOTHING)).found();
        return plan ? Optional.of(way) : Optional.empty();
    }

    private CpSat.Answer solve(PlanModel model) {
        CpSat.Answer answer = model.sat.solve(Math.max(Math.min(left, perCheck), LEAST_WORK));
        left -= Math.max(answer.work(), LEAST_CHARGE);
        return answer;
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
        return bridged(problem, gone).part(left);
    }

    /** What came after it comes after what came before it. */
    private static PlanProblem bridged(PlanProblem problem, Set<String> gone) {
        Map<String, Lag> lags = new LinkedHashMap<>();
        problem.lags().forEach(lag -> lags.put(lag.id(), lag));
        for (Lag into : problem.lags()) {
            for (Lag out : problem.lags()) {
                boolean across = into.isHard()
                        && out.isHard()
                        && gone.contains(into.to())
                        && gone.contains(out.from())
                        && !gone.contains(into.from())
                        && !gone.contains(out.to())
                        && !into.from().equals(out.to());
                if (across && into.min() != null && out.min() != null) {
                    Lag over = Lag.between(into.from(), out.to(), into.min(), null);
                    lags.putIfAbsent(over.id(), over);
                }
            }
        }
        return problem.withLags(List.copyOf(lags.values()));
    }
}
