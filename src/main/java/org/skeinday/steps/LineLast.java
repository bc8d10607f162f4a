package org.skeinday.steps;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The line is looked at last, since people move while the rest is seen to: it is not ticked while something critical of its
 * wind is open, at the winding place or before winding, and it is asked again when something critical is ticked after it.
 */
public final class LineLast {
    /** Why the line is asked again. */
    public static final String SEEN_TO_AFTER = "something else was seen to after it, and the line comes last";

    private LineLast() {}

    /**
     * Why the line cannot be ticked yet, naming what comes first; empty for every other item and when nothing is before it.
     *
     * @param place the list of the winding place at which the attempt is wound; empty where nothing is asked there
     * @param askedAgain done items that whoever ticks is asked again after an interruption
     * @param passes of this attempt at this place: what an adult answered for is not waited for
     */
    public static Optional<String> refuses(
            Optional<Run> place, Run run, String step, List<Step> askedAgain, List<GatePassed> passes) {
        if (!step.equals(Step.LINE) || run.list().moment() != Moment.BEFORE_WINDING) {
            return Optional.empty();
        }
        Stream<Step> there = place.stream()
                .flatMap(list -> list.list().critical().stream().filter(other -> isWaitedFor(list, other, passes)));
        Stream<Step> before = run.list().critical().stream()
                .filter(other -> !other.id().equals(Step.LINE))
                .filter(other -> askedAgain.contains(other) || isWaitedFor(run, other, passes));
        List<Step> first = Stream.concat(there, before).toList();
        return first.isEmpty() ? Optional.empty() : Optional.of(words(first));
    }

    private static String words(List<Step> first) {
        String next = "\u201c" + first.get(0).text() + "\u201d";
        return "The line comes last, just before winding. Before it: "
                + (first.size() == 1 ? next : next + " and " + (first.size() - 1) + " more");
    }

    /**
     * Whether a tick of this item makes the line be asked again: the item was open, and the line was done before it.
     *
     * @param ticked the list of the item: the one before winding, or that of the winding place
     * @param run the list before winding, which has the line
     */
    public static boolean opensAgain(Run ticked, Run run, String step, long atMs, List<GatePassed> passes) {
        if (step.equals(Step.LINE) || run.list().moment() != Moment.BEFORE_WINDING) {
            return false;
        }
        boolean late = ticked.list().critical().stream()
                .anyMatch(other -> other.id().equals(step) && isWaitedFor(ticked, other, passes));
        return late && wasDoneBefore(run, atMs);
    }

    private static boolean wasDoneBefore(Run run, long atMs) {
        return run.states().stream()
                .filter(state -> state.step().id().equals(Step.LINE) && state.isDone())
                .anyMatch(
                        state -> state.counted().stream().allMatch(c -> c.tick().atMs() < atMs));
    }

    private static boolean isWaitedFor(Run run, Step step, List<GatePassed> passes) {
        return run.states().stream()
                .filter(state -> state.step().equals(step) && state.isOpen())
                .anyMatch(state -> passes.stream().noneMatch(pass -> pass.covers(state)));
    }
}
