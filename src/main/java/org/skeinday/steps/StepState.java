package org.skeinday.steps;

import java.util.List;
import java.util.Optional;

/**
 * How one item stands in a run.
 *
 * @param facts all about it in the order in which they happened, also those that do not count any more
 * @param counted the ticks that hold, each with what corrections made of it; two people's are two
 * @param skip the skip that holds, while nothing was ticked
 * @param reopened the latest time it was asked again, whether or not it was answered since
 */
public record StepState(
        Step step, List<RunFact> facts, List<Counted> counted, Optional<Skipped> skip, Optional<Reopened> reopened) {
    public enum Status {
        OPEN,
        DONE,
        SKIPPED
    }

    /** @param answer empty for OK */
    public record Counted(RunFact tick, Optional<String> answer) {}

    public StepState {
        facts = List.copyOf(facts);
        counted = List.copyOf(counted);
    }

    public Status status() {
        return !counted.isEmpty() ? Status.DONE : skip.isPresent() ? Status.SKIPPED : Status.OPEN;
    }

    public boolean isDone() {
        return status() == Status.DONE;
    }

    public boolean isOpen() {
        return status() == Status.OPEN;
    }

    /** The latest value that holds. */
    public Optional<String> answer() {
        return counted.isEmpty()
                ? Optional.empty()
                : counted.get(counted.size() - 1).answer();
    }

    /** Whether two people's values differ: put before a person, both are kept. */
    public boolean isInDoubt() {
        return counted.stream().map(Counted::answer).distinct().count() > 1;
    }
}
