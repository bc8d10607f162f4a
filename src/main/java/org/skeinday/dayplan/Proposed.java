package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Part;

/**
 * A plan that is put before the captain.
 *
 * @param problem that the plan keeps
 * @param outcome of the last try
 * @param leftOut attempts that do not fit, the one given up first first; empty when all do
 * @param conflict why they do not, in words; empty when all fit
 * @param waysOut what else would do, each checked; empty when all fit
 */
public record Proposed(
        PlanProblem problem, Outcome outcome, List<String> leftOut, List<String> conflict, List<String> waysOut) {
    public Proposed {
        leftOut = List.copyOf(leftOut);
        conflict = List.copyOf(conflict);
        waysOut = List.copyOf(waysOut);
    }

    /**
     * The best plan of the day. Where not everything fits, of what is left when attempts are given up: of those that are
     * proven to be too much together the last, one by one; where nothing is proven in time the last of all, more at once
     * each time, so that it may be more than must be.
     *
     * @param now seconds since the plan's zero
     * @param inForce null before the first plan
     * @param words for times in the conflict
     * @throws SolverMissing when the solver does not run here
     */
    public static Proposed of(Scenario day, long now, @Nullable DayPlan inForce, Effort effort, TimeWords words) {
        List<String> leftOut = new ArrayList<>();
        List<String> conflict = new ArrayList<>();
        List<String> waysOut = new ArrayList<>();
        Scenario left = day;
        int atOnce = 1;
        while (true) {
            PlanProblem problem = left.problem(now, inForce);
            List<String> surely = leftOut.isEmpty() ? List.of() : surely(left, problem);
            if (!surely.isEmpty()) {
                left = without(left, surely, surely.size(), leftOut);
                continue; // no search is needed to see that it is still too much
            }
            Outcome outcome = leftOut.isEmpty()
                    ? Planner.plan(problem, Goal.SLACK, effort)
                    : Planner.planBriefly(problem, Goal.SLACK, effort);
            List<String> last = lastThatMayGo(left, tasks(outcome.conflict()));
            if (outcome.plan() != null || last.isEmpty()) {
                return new Proposed(problem, outcome, leftOut, conflict, waysOut);
            }
            if (leftOut.isEmpty()) {
                explain(problem, outcome, effort, words, conflict, waysOut);
            }
            // Without a proof of what conflicts, more and more: the page waits.
            atOnce = outcome.conflict().isEmpty() ? 2 * atOnce : 1;
            left = without(left, last, atOnce, leftOut);
        }
    }

    /** Of each entry that comes too late by itself the last attempt; else one of those that are counted as too much. */
    private static List<String> surely(Scenario day, PlanProblem problem) {
        Set<String> late = StartBounds.of(problem).late(problem);
        Set<String> counted = late.isEmpty() ? Overfull.counted(problem) : late;
        if (counted.isEmpty()) {
            return List.of();
        }
        List<String> last = lastThatMayGo(day, counted);
        if (late.isEmpty()) {
            return last.subList(0, Math.min(1, last.size()));
        }
        Map<String, String> byEntry = new LinkedHashMap<>();
        for (String id : last) {
            day.attempts().stream()
                    .filter(attempt -> attempt.id().equals(id))
                    .forEach(attempt -> byEntry.putIfAbsent(attempt.entry(), id));
        }
        return List.copyOf(byEntry.values());
    }

    private static void explain(
            PlanProblem problem,
            Outcome outcome,
            Effort effort,
            TimeWords words,
            List<String> conflict,
            List<String> waysOut) {
        if (outcome.status() != Outcome.Status.INFEASIBLE) {
            conflict.add("no plan with all attempts was found in time, and no proof that there is none");
        }
        conflict.addAll(WhyNot.inShort(problem, outcome.conflict(), words));
        WaysOut.of(problem, outcome.conflict(), effort).forEach(way -> waysOut.add(way.words(problem, words)));
    }

    private static Scenario without(Scenario day, List<String> last, int count, List<String> leftOut) {
        Scenario left = day;
        for (String id : last.subList(0, Math.min(count, last.size()))) {
            leftOut.add(id);
            left = left.withoutAttempt(id);
        }
        return left;
    }

    private static Set<String> tasks(List<Requirement> conflict) {
        return conflict.stream()
                .filter(one -> one.kind() == Requirement.Kind.TASK)
                .map(Requirement::id)
                .collect(Collectors.toSet());
    }

    /**
     * Whether the plan in force can no longer be kept, or leaves at least so much less in hand than this one.
     *
     * @param asItIs the day with the plan in force, without what that has given up
     * @param least in the plan's unit
     */
    public boolean isWorthTaking(PlanProblem asItIs, long least) {
        Slip slip = Slip.of(asItIs);
        DayPlan goesOn = slip.goesOn();
        if (goesOn == null || !slip.later().isEmpty()) {
            return true;
        }
        InHand inHand = InHand.of(asItIs, goesOn);
        long now = asItIs.tasks().stream()
                .filter(task -> !task.isFixed())
                .flatMapToLong(task -> inHand.timeInHand(task.id()).stream())
                .min()
                .orElse(Long.MAX_VALUE);
        return outcome.objective().orElse(Long.MIN_VALUE) - least >= now;
    }

    /** The same, with the plan in force in place of one that is hardly better. */
    public Proposed keepingInForce() {
        return new Proposed(
                problem,
                new Outcome(
                        outcome.status(),
                        outcome.objective(),
                        outcome.bound(),
                        problem.inForce(),
                        true,
                        outcome.conflict(),
                        outcome.irreducible(),
                        outcome.seconds()),
                leftOut,
                conflict,
                waysOut);
    }

    /**
     * Attempts that have not begun, the highest number first: the first attempts of every entry are kept longest. Of those
     * that are too much together, when any are known; else of all.
     */
    private static List<String> lastThatMayGo(Scenario day, Set<String> tooMuch) {
        List<AttemptAhead> open = day.attempts().stream()
                .filter(a -> a.begun().isEmpty())
                .sorted(Comparator.comparingInt(AttemptAhead::number)
                        .thenComparing(AttemptAhead::entry)
                        .reversed())
                .toList();
        List<AttemptAhead> among = open.stream()
                .filter(a -> Stream.of(Part.values()).anyMatch(part -> tooMuch.contains(EventChains.task(a, part))))
                .toList();
        // What cannot be kept and cannot be given up either is no reason to give up the others.
        return (tooMuch.isEmpty() ? open : among).stream().map(AttemptAhead::id).toList();
    }
}
