package org.skeinday.dayplan;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Part;

/** The plan in force after news, in its own order, with what is late pushed back: often good enough, always near. */
final class PushedBack {
    private PushedBack() {}

    /** @return null when a task of an attempt is new, or when in this order something cannot be kept */
    static @Nullable DayPlan of(PlanProblem problem, DayPlan inForce) {
        Map<String, Long> ahead = aheadOfPlan(problem, inForce);
        Map<String, Long> starts = new TreeMap<>();
        SortedMap<String, List<String>> people = new TreeMap<>(inForce.people());
        for (Task task : problem.tasks()) {
            Long before = inForce.starts().get(task.id());
            if (before == null && !(task.isFixed() || isBeside(problem, task))) {
                return null;
            }
            Long fixed = task.fixedStart();
            starts.put(
                    task.id(),
                    fixed != null
                            ? fixed
                            : before == null
                                    ? task.earliestStart()
                                    : Math.max(before - ahead(task, ahead), task.earliestStart()));
            if (before == null) {
                namedPeople(task).ifPresent(who -> people.put(task.id(), who));
            }
        }
        push(Arcs.of(problem, new DayPlan(new TreeMap<>(starts), people, inForce.motors())), starts);
        DayPlan plan = new DayPlan(new TreeMap<>(starts), people, inForce.motors());
        return PlanCheck.faults(problem, plan).isEmpty() ? plan : null;
    }

    /**
     * By how much attempts are ahead of their plan, by chain: what is wound is loaded and flown at once, and does not wait for
     * the time that was planned. Who is only called early still winds as planned.
     */
    private static Map<String, Long> aheadOfPlan(PlanProblem problem, DayPlan inForce) {
        Map<String, Long> ahead = new TreeMap<>();
        for (Task task : problem.tasks()) { // of parts in their order the last that has begun says it
            Long planned = inForce.starts().get(task.id());
            Long began = task.fixedStart();
            Part part = PartTask.parse(task.id()).part();
            if (task.chain() != null && planned != null && began != null && part != null && part != Part.PREPARE) {
                ahead.put(task.chain(), Math.max(0, planned - began));
            }
        }
        return ahead;
    }

    private static long ahead(Task task, Map<String, Long> ahead) {
        return task.chain() == null ? 0 : ahead.getOrDefault(task.chain(), 0L);
    }

    /** A repair or a retrieval: no part of an attempt, where there are attempts. */
    static boolean isBeside(PlanProblem problem, Task task) {
        return task.chain() == null && problem.tasks().stream().anyMatch(other -> other.chain() != null);
    }

    /** Of an absence; empty where anybody will do, which only a plan can choose. */
    private static Optional<List<String>> namedPeople(Task task) {
        List<String> named = task.people().stream()
                .flatMap(need -> Stream.ofNullable(need.person()))
                .toList();
        return named.isEmpty() || named.size() < task.people().size() ? Optional.empty() : Optional.of(named);
    }

    /** A pass per link of the longest chain settles it, unless something circles: then the check finds it broken. */
    private static void push(List<Arc> arcs, Map<String, Long> starts) {
        boolean moved = true;
        for (int pass = 0; moved && pass <= starts.size(); pass++) {
            moved = false;
            for (Arc arc : arcs) {
                long least = Objects.requireNonNull(starts.get(arc.from())) + arc.length();
                if (least > Objects.requireNonNull(starts.get(arc.to()))) {
                    starts.put(arc.to(), least);
                    moved = true;
                }
            }
        }
    }
}
