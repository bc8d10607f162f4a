package org.skeinday.steps;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The facts of one run put together; in which order they arrived plays no part, and one that came twice came once. */
final class RunState {
    private final Checklist list;
    private final List<RunFact> facts;
    private final List<String> takenBack;

    RunState(Checklist list, Collection<? extends RunFact> arrived, Pauses pauses) {
        this.list = list;
        Map<String, RunFact> byId = new TreeMap<>();
        arrived.forEach(f -> byId.putIfAbsent(f.id(), f));
        List<RunFact> all = byId.values().stream().sorted(RunFact::inOrder).toList();
        this.facts = all;
        List<String> back = new ArrayList<>();
        for (TakenBack undo : only(TakenBack.class).toList()) {
            RunFact undone = byId.get(undo.about());
            if (undone != null && pauses.inTime(undone, undo)) {
                back.add(undo.about());
            }
        }
        this.takenBack = back;
    }

    List<RunFact> inOrder() {
        return facts;
    }

    /** Taps that hold, for the time and the person of the last of them. */
    Stream<RunFact> taps() {
        return facts.stream()
                .filter(f -> f instanceof Ticked || f instanceof ReadAloud || f instanceof Skipped)
                .filter(this::stands);
    }

    StepState state(Step step) {
        Optional<Reopened> reopened =
                only(Reopened.class).filter(r -> r.stepId().equals(step.id())).reduce((a, b) -> b);
        long since = reopened.map(Reopened::atMs).orElse(Long.MIN_VALUE);
        List<StepState.Counted> counted = ticks(step)
                .filter(t -> t.atMs() > since)
                .flatMap(t -> counted(step, t).stream())
                .toList();
        Optional<Skipped> skip = only(Skipped.class)
                .filter(s -> s.stepId().equals(step.id()) && !step.critical())
                .filter(s -> stands(s) && s.atMs() > since)
                .reduce((a, b) -> b);
        return new StepState(step, about(step), counted, counted.isEmpty() ? skip : Optional.empty(), reopened);
    }

    /** In the order of all facts; what was read aloud ticks each item, and one that asks for a value has none from it. */
    private Stream<RunFact> ticks(Step step) {
        return facts.stream()
                .filter(f -> f instanceof Ticked ? f.stepId().equals(step.id()) : f instanceof ReadAloud)
                .filter(this::stands);
    }

    /** Empty for a tick that was none after all, or that lacks the value. */
    private Optional<StepState.Counted> counted(Step step, RunFact tick) {
        Optional<Corrected> right = only(Corrected.class)
                .filter(c -> c.about().equals(tick.id()) && c.stepId().equals(step.id()))
                .filter(this::stands)
                .max(Comparator.comparing((Corrected c) -> c, RunFact::inOrder));
        if (right.isPresent() && !right.get().done()) {
            return Optional.empty();
        }
        Optional<String> said = tick instanceof Ticked t ? Optional.ofNullable(t.answer()) : Optional.empty();
        Optional<String> answer =
                right.isPresent() ? Optional.ofNullable(right.get().answer()) : said;
        return step.answer().isValue() && answer.isEmpty()
                ? Optional.empty()
                : Optional.of(new StepState.Counted(tick, answer));
    }

    private List<RunFact> about(Step step) {
        List<String> ids = new ArrayList<>();
        List<RunFact> about = new ArrayList<>();
        for (RunFact fact : facts) {
            if (isAbout(fact, step, ids)) {
                about.add(fact);
                ids.add(fact.id());
            }
        }
        return about;
    }

    private static boolean isAbout(RunFact fact, Step step, List<String> ids) {
        if (fact instanceof TakenBack back) {
            return ids.contains(back.about());
        }
        return fact instanceof ReadAloud || fact.stepId().equals(step.id());
    }

    /** Items that this revision of the list does not have: kept, and shown. */
    List<RunFact> strays() {
        return facts.stream()
                .filter(f -> !f.stepId().isEmpty() && list.step(f.stepId()).isEmpty())
                .toList();
    }

    private boolean stands(RunFact fact) {
        return !takenBack.contains(fact.id());
    }

    private <F extends RunFact> Stream<F> only(Class<F> kind) {
        return facts.stream().filter(kind::isInstance).map(kind::cast);
    }
}
