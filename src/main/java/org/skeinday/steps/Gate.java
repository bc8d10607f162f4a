package org.skeinday.steps;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The one gate: winding starts when the critical items of the winding place and of the list before winding are done, or the
 * supervising adult answers for them. Nobody answers for eyes and line. Nothing else is ever held, and nothing once winding
 * has started.
 */
public final class Gate {
    /** Said where somebody would answer for it all the same. */
    public static final String NO_OVERRIDE = "There is no override for eyes and line: they are seen to and ticked.";

    /**
     * @param open items that winding waits for, or for which the adult answers; in the order in which they are done
     * @param passed by whom and why all was answered for that can be; empty when nothing such is open or nobody did
     */
    public record Verdict(List<Step> open, Optional<GatePassed> passed) {
        public Verdict {
            open = List.copyOf(open);
        }

        /** What the supervising adult may answer for. */
        public List<Step> forTheAdult() {
            return open.stream().filter(step -> !step.hasNoOverride()).toList();
        }

        /** Whether the supervising adult may answer for something and has not. */
        public boolean asksTheAdult() {
            return !forTheAdult().isEmpty() && passed.isEmpty();
        }

        public boolean isHeld() {
            return !waitsFor().isEmpty();
        }

        private List<Step> waitsFor() {
            return open.stream()
                    .filter(step -> step.hasNoOverride() || passed.isEmpty())
                    .toList();
        }

        /** Why winding cannot start, naming what is done next; empty when it can. */
        public Optional<String> refused() {
            return isHeld()
                    ? Optional.of("Winding waits for " + named(waitsFor()) + ". " + wayOut())
                    : Optional.empty();
        }

        /** The next one or two by their words, of more the next and how many there are: who winds reads one sentence. */
        private static String named(List<Step> steps) {
            String next = "\u201c" + steps.get(0).text() + "\u201d";
            return switch (steps.size()) {
                case 1 -> next;
                case 2 -> next + " and \u201c" + steps.get(1).text() + "\u201d";
                default -> next + " and " + (steps.size() - 1) + " more";
            };
        }

        private String wayOut() {
            if (waitsFor().stream().noneMatch(Step::hasNoOverride)) {
                return "The supervising adult may answer for it with a reason.";
            }
            return asksTheAdult()
                    ? "The supervising adult may answer with a reason, but never for eyes and line."
                    : NO_OVERRIDE;
        }
    }

    private Gate() {}

    /**
     * @param place the run of the winding place's list; without facts when nobody began it
     * @param beforeWinding of this attempt
     * @param passes of this attempt
     */
    public static Verdict startWinding(Run place, Run beforeWinding, List<GatePassed> passes) {
        beOf(place, Moment.WINDING_PLACE);
        beOf(beforeWinding, Moment.BEFORE_WINDING);
        List<StepState> open = new ArrayList<>();
        List.of(place, beforeWinding)
                .forEach(run -> run.states().stream()
                        .filter(state -> state.isOpen() && state.step().critical())
                        .forEach(open::add));
        return new Verdict(open.stream().map(StepState::step).toList(), passed(open, passes));
    }

    /** @param open for how many open items this answer holds, at least one */
    public record Answered(GatePassed pass, int open) {}

    /**
     * Who answers for what is open, each item with the latest who does; an answer for what was ticked or asked again since is
     * not among them.
     */
    public static List<Answered> answered(Run place, Run beforeWinding, List<GatePassed> passes) {
        Map<GatePassed, Integer> counts = new LinkedHashMap<>();
        Stream.of(place, beforeWinding)
                .flatMap(run -> run.states().stream())
                .filter(state -> state.isOpen() && state.step().critical())
                .forEach(state -> passes.stream()
                        .filter(pass -> pass.covers(state))
                        .reduce((a, b) -> b.atMs() >= a.atMs() ? b : a)
                        .ifPresent(pass -> counts.merge(pass, 1, Integer::sum)));
        return counts.entrySet().stream()
                .map(one -> new Answered(one.getKey(), one.getValue()))
                .toList();
    }

    /** By one who answered for all of it since it was asked last. */
    private static Optional<GatePassed> passed(List<StepState> open, List<GatePassed> passes) {
        List<StepState> answered =
                open.stream().filter(state -> !state.step().hasNoOverride()).toList();
        return answered.isEmpty()
                ? Optional.empty()
                : passes.stream()
                        .filter(p -> answered.stream().allMatch(p::covers))
                        .reduce((a, b) -> b.atMs() >= a.atMs() ? b : a);
    }

    private static void beOf(Run run, Moment moment) {
        if (run.list().moment() != moment) {
            throw new IllegalArgumentException("The gate must be given a list of " + moment.word() + ", but '"
                    + run.list().title() + "' is of " + run.list().moment().word());
        }
    }
}
