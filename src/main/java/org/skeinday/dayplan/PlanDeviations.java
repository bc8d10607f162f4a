package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** What has happened since a plan was taken: why it slips, or cannot be kept. */
public final class PlanDeviations {
    /** Less is not worth a word, in seconds. */
    private static final long WORTH = 60;

    private final PlanTaken taken;
    private final PlanProblem problem;
    private final Map<String, PlanTaken.Planned> planned = new TreeMap<>();
    private final long zeroMs;
    private final TimeWords words;
    private final UnaryOperator<String> nameOf;
    private final Set<String> called = new TreeSet<>();
    private final List<String> said = new ArrayList<>();

    private PlanDeviations(
            PlanTaken taken, PlanProblem problem, long zeroMs, TimeWords words, UnaryOperator<String> nameOf) {
        this.taken = taken;
        this.problem = problem;
        this.zeroMs = zeroMs;
        this.words = words;
        this.nameOf = nameOf;
        taken.tasks().forEach(task -> planned.put(task.task(), task));
    }

    /**
     * @param problem the day as it is now, times in seconds since {@code zeroMs}, ms since 1970 UTC
     * @param nameOf display name of a person's id
     * @return one sentence for each, none twice; empty when nothing has
     */
    public static List<String> of(
            PlanTaken taken,
            PlanProblem problem,
            Collection<AttemptAhead> attempts,
            long zeroMs,
            TimeWords words,
            UnaryOperator<String> nameOf) {
        PlanDeviations deviations = new PlanDeviations(taken, problem, zeroMs, words, nameOf);
        deviations.windows(attempts);
        attempts.stream().filter(a -> !a.begun().isEmpty()).forEach(a -> deviations.called.add(EventChains.whole(a)));
        problem.tasks().forEach(deviations::task);
        return deviations.said.stream().distinct().toList();
    }

    private void windows(Collection<AttemptAhead> attempts) {
        TreeSet<String> seen = new TreeSet<>();
        for (AttemptAhead attempt : attempts) {
            if (seen.add(attempt.entry())) {
                taken.windows().stream()
                        .filter(w -> w.entry().equals(attempt.entry()))
                        .forEach(w -> window(w, attempt));
            }
        }
    }

    private void window(PlanTaken.Window before, AttemptAhead now) {
        Long opens = now.opens();
        Long closes = now.closes();
        if (!Objects.equals(second(before.opensMs()), opens) && opens != null) {
            said.add("The window of " + now.entry() + " opens at " + words.at(opens) + was(before.opensMs()));
        }
        if (!Objects.equals(second(before.closesMs()), closes) && closes != null) {
            said.add("The window of " + now.entry() + " closes at " + words.at(closes) + was(before.closesMs()));
        }
    }

    private String was(@Nullable Long ms) {
        Long second = second(ms);
        return second == null ? "" : ", no longer at " + words.at(second);
    }

    private @Nullable Long second(@Nullable Long ms) {
        return ms == null ? null : (Long) Math.floorDiv(ms - zeroMs, 1000L);
    }

    private void task(Task task) {
        if (task.chain() == null) {
            return; // absences, repairs and retrievals are told apart
        }
        PlanTaken.Planned before = planned.get(task.id());
        if (before == null) {
            if (task.duration() > 0) {
                said.add(task.chain() + " is not in it");
            }
            return;
        }
        if (task.isFixed()) {
            overrun(task, before);
            return;
        }
        motor(task, before);
        before.who().forEach(person -> person(person, task));
    }

    private void overrun(Task task, PlanTaken.Planned before) {
        long longer = task.duration() - (before.endMs() - before.startMs()) / 1000;
        long later = Objects.requireNonNull(task.fixedStart()) - (before.startMs() - zeroMs) / 1000;
        if (longer >= WORTH && later + longer >= WORTH) { // what began early may take longer, if it ends as planned
            said.add(task.id() + " takes " + words.lasting(longer) + " longer");
        } else if (later >= WORTH) {
            said.add(task.id() + " began " + words.lasting(later) + " later");
        }
    }

    private void motor(Task task, PlanTaken.Planned before) {
        String motor = before.motor();
        if (motor != null && !task.motors().isEmpty() && !task.motors().containsKey(motor)) {
            said.add(
                    called.contains(task.chain()) && task.motors().size() == 1
                            ? task.chain() + " takes motor " + task.motors().firstKey() + " in place of " + motor
                            : "Motor " + motor + " cannot be used any more");
        }
    }

    private void person(String person, Task task) {
        boolean there = task.people().isEmpty() // then nobody is asked for
                || problem.people().stream().anyMatch(p -> p.id().equals(person));
        if (!there) {
            said.add(nameOf.apply(person) + " is not there any more");
        }
    }
}
