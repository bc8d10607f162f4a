package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Why a task starts when it does, one wait after the other back to where nothing waits.
 *
 * @param task that waits
 * @param on the task that it waits for, empty where it waits for none
 * @param because in words, for example {@code waits for lane, held by a-1 fly}
 */
public record HoldUp(String task, StartReason why, String on, String because) {
    /** @return the waits of {@code task}, its own first; empty when it could start earlier without harm */
    public static List<HoldUp> of(PlanProblem problem, DayPlan plan, String task) {
        List<Arc> arcs = Arcs.of(problem, plan);
        var tasks = problem.byId();
        List<HoldUp> found = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        String now = task;
        while (seen.add(now)) {
            Task held = tasks.get(now);
            if (held == null || held.isFixed() || plan.start(now) == held.earliestStart()) {
                ground(held, found);
                return found;
            }
            Arc arc = tightest(arcs, plan, now, seen);
            if (arc == null) {
                return found;
            }
            found.add(new HoldUp(now, arc.why(), arc.from(), arc.words()));
            now = arc.from();
        }
        return found;
    }

    private static void ground(@Nullable Task held, List<HoldUp> found) {
        if (held != null && held.isFixed()) {
            found.add(new HoldUp(held.id(), StartReason.FIXED, "", "is fixed at " + held.fixedStart()));
        } else if (held != null && held.earliest() != null) {
            found.add(new HoldUp(held.id(), StartReason.NOT_BEFORE, "", "must not start before " + held.earliest()));
        }
    }

    /** Of those without play the one that takes longest: short links explain less. */
    private static @Nullable Arc tightest(List<Arc> arcs, DayPlan plan, String task, Set<String> seen) {
        return arcs.stream()
                .filter(arc -> arc.to().equals(task) && arc.isTight(plan) && !seen.contains(arc.from()))
                .max(Comparator.comparingLong(Arc::length).thenComparing(Arc::from))
                .orElse(null);
    }

    /** @return the waits of the task with the least time in hand, and of those the last; empty without any window */
    public static List<HoldUp> ofTheTightest(PlanProblem problem, DayPlan plan) {
        InHand inHand = InHand.of(problem, plan);
        return problem.tasks().stream()
                .filter(task -> !task.isFixed() && inHand.timeInHand(task.id()).isPresent())
                .min(Comparator.comparingLong(
                                (Task task) -> inHand.timeInHand(task.id()).orElseThrow())
                        .thenComparing(task -> plan.start(task.id()), Comparator.reverseOrder())
                        .thenComparing(Task::id))
                .map(task -> of(problem, plan, task.id()))
                .orElse(List.of());
    }
}
