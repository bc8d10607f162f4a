package org.skeinday.steps;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One walk through a list, put together from what happened in it. Nothing is asked of a run without facts: all is open. */
public final class Run {
    private final Checklist list;
    private final RunState folded;
    private final Pauses pauses;
    private final List<StepState> states;

    private Run(Checklist list, RunState folded, Pauses pauses) {
        this.list = list;
        this.folded = folded;
        this.pauses = pauses;
        this.states = list.steps().stream().map(folded::state).toList();
    }

    /**
     * @param list in the revision of the run
     * @param facts of this run only, in any order
     */
    public static Run of(Checklist list, Collection<? extends RunFact> facts, Pauses pauses) {
        return new Run(list, new RunState(list, facts, pauses), pauses);
    }

    public Checklist list() {
        return list;
    }

    /** One for each item, in the order of the list. */
    public List<StepState> states() {
        return states;
    }

    public List<Step> open() {
        return steps(StepState.Status.OPEN);
    }

    public List<Step> done() {
        return steps(StepState.Status.DONE);
    }

    /** Left out with a reason; they stay visible. */
    public List<Step> skipped() {
        return steps(StepState.Status.SKIPPED);
    }

    private List<Step> steps(StepState.Status status) {
        return states.stream()
                .filter(s -> s.status() == status)
                .map(StepState::step)
                .toList();
    }

    public boolean isComplete() {
        return open().isEmpty();
    }

    /** The line that names what comes next, once nothing is open. */
    public Optional<String> ending() {
        return isComplete() ? Optional.of(list.next()) : Optional.empty();
    }

    /** Everything in the order in which it happened, also what was taken back. */
    public List<RunFact> facts() {
        return folded.inOrder();
    }

    /** Facts about items that this revision does not have. */
    public List<RunFact> strays() {
        return folded.strays();
    }

    /**
     * What to show to who opens the list again; empty when nothing was tapped yet, when all is done, or when somebody
     * tapped just now. A list that was done to its end and had an item reopened was not interrupted.
     */
    public Optional<Resumption> resumedBy(@Nullable String personId, String device, long nowMs) {
        Optional<RunFact> last = folded.taps().reduce((a, b) -> b);
        if (last.isEmpty() || isComplete() || wasComplete()) {
            return Optional.empty();
        }
        long away = Math.max(0, nowMs - last.get().atMs());
        if (away < pauses.together().toMillis()) {
            return Optional.empty();
        }
        boolean tooLong = away >= pauses.again().toMillis();
        boolean other = !last.get().isBy(personId, device) && !takesPart(personId, device, nowMs);
        List<Step> again =
                tooLong || other ? done().stream().filter(Step::critical).toList() : List.of();
        return Optional.of(new Resumption(lastDone(), away, again, other));
    }

    /** Whoever has tapped here a short while ago has seen what the others did: several people may do one list together. */
    private boolean takesPart(@Nullable String personId, String device, long nowMs) {
        return folded.taps()
                .anyMatch(tap -> tap.isBy(personId, device)
                        && nowMs - tap.atMs() < pauses.again().toMillis());
    }

    /** Just before an item was reopened last. */
    private boolean wasComplete() {
        return facts().stream()
                .filter(Reopened.class::isInstance)
                .reduce((a, b) -> b)
                .map(last ->
                        facts().stream().filter(f -> f.atMs() < last.atMs()).toList())
                .filter(before -> of(list, before, pauses).isComplete())
                .isPresent();
    }

    private Optional<Step> lastDone() {
        return states.stream()
                .filter(StepState::isDone)
                .max((a, b) -> RunFact.inOrder(latest(a), latest(b)))
                .map(StepState::step);
    }

    private static RunFact latest(StepState state) {
        return state.counted().get(state.counted().size() - 1).tick();
    }
}
