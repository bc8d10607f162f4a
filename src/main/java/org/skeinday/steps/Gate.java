package org.skeinday.steps;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The one gate: winding starts when the critical items of the winding place and eye protection are done, or when the
 * supervising adult answers for what is open. Nothing else is ever held, and nothing once winding has started.
 */
public final class Gate {
    /**
     * @param open items that winding waits for, or for which the adult answers
     * @param passed by whom and why; empty when nothing is open or winding is held
     */
    public record Verdict(List<Step> open, Optional<GatePassed> passed) {
        public Verdict {
            open = List.copyOf(open);
        }

        public boolean isHeld() {
            return !open.isEmpty() && passed.isEmpty();
        }

        /** Why winding cannot start, naming what is open; empty when it can. */
        public Optional<String> refused() {
            return isHeld()
                    ? Optional.of("Winding waits for: "
                            + open.stream()
                                    .map(step -> "\u201c" + step.text() + "\u201d")
                                    .collect(Collectors.joining(", "))
                            + ". The supervising adult may answer for it with a reason.")
                    : Optional.empty();
        }
    }

    private Gate() {}

    /**
     * @param place the run of the winding place's list; without facts when nobody began it
     * @param beforeWinding of this attempt; only its eye protection is waited for
     * @param passes of this attempt
     */
    public static Verdict startWinding(Run place, Run beforeWinding, List<GatePassed> passes) {
        beOf(place, Moment.WINDING_PLACE);
        beOf(beforeWinding, Moment.BEFORE_WINDING);
        List<Step> open = new ArrayList<>();
        beforeWinding.open().stream().filter(s -> s.id().equals(Step.EYES)).forEach(open::add);
        place.open().stream().filter(Step::critical).forEach(open::add);
        List<String> ids = open.stream().map(Step::id).toList();
        Optional<GatePassed> passed = open.isEmpty()
                ? Optional.empty()
                : passes.stream()
                        .filter(p -> p.steps().containsAll(ids))
                        .reduce((a, b) -> b.atMs() >= a.atMs() ? b : a);
        return new Verdict(open, passed);
    }

    private static void beOf(Run run, Moment moment) {
        if (run.list().moment() != moment) {
            throw new IllegalArgumentException("The gate must be given a list of " + moment.word() + ", but '"
                    + run.list().title() + "' is of " + run.list().moment().word());
        }
    }
}
