package org.skeinday.steps;

import java.util.Optional;

/** What is refused in a run, with the reason; empty when it is taken. */
public final class RunRules {
    private RunRules() {}

    public static Optional<String> refuses(Checklist list, Ticked tick) {
        Optional<Step> step = list.step(tick.stepId());
        if (step.isEmpty()) {
            return notThere(list);
        }
        if (!step.get().answer().isValue()) {
            return Optional.empty();
        }
        return tick.answer() == null
                ? Optional.of("'" + step.get().text() + "' is answered with a value, not with OK")
                : step.get().answer().refuses(tick.answer());
    }

    public static Optional<String> refuses(Checklist list, Skipped skip) {
        Optional<Step> step = list.step(skip.stepId());
        if (step.isEmpty()) {
            return notThere(list);
        }
        return step.get().critical()
                ? Optional.of("'" + step.get().text() + "' is critical and cannot be left out: "
                        + step.get().reason())
                : Optional.empty();
    }

    /** One tap for a whole list, if it is one that is read aloud. */
    public static Optional<String> refuses(Checklist list, ReadAloud read) {
        return list.aloud()
                ? Optional.empty()
                : Optional.of("'" + list.title() + "' is not a list to read aloud; tick its items one by one");
    }

    /** @param undone what it is about */
    public static Optional<String> refuses(RunFact undone, TakenBack undo, Pauses pauses) {
        if (undone instanceof TakenBack || undone instanceof Reopened) {
            return Optional.of("only a tick, a skip or a correction can be taken back");
        }
        return pauses.inTime(undone, undo)
                ? Optional.empty()
                : Optional.of(
                        "it can be taken back for " + pauses.undo().toSeconds() + " s only; correct it with a reason");
    }

    public static Optional<String> refuses(Checklist list, Corrected right) {
        Optional<Step> step = list.step(right.stepId());
        if (step.isEmpty()) {
            return notThere(list);
        }
        ItemAnswer kind = step.get().answer();
        if (!right.done() || !kind.isValue()) {
            return Optional.empty();
        }
        return right.answer() == null
                ? Optional.of("a correction of '" + step.get().text() + "' needs the right value")
                : kind.refuses(right.answer());
    }

    private static Optional<String> notThere(Checklist list) {
        return Optional.of("revision " + list.revision() + " of '" + list.title() + "' has no such item");
    }
}
