package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.attempt.AttemptPhase.Name;
import org.skeinday.contest.DayKind;

/**
 * The phases of one attempt in a row, as each page of the day shows them on top: what is done, what is now, what comes.
 *
 * @param steps in order
 */
public record PhaseStrip(List<Step> steps) {
    /** Where a step of the strip stands. */
    public enum Mark {
        DONE,
        NOW,
        /** An exit from the usual way: broke, run back, abandoned, void. */
        EXIT,
        LATER
    }

    /** @param words as {@link PhaseWords} says the phase */
    public record Step(Name phase, Mark mark, String words) {}

    private static final List<Name> WAY =
            List.of(Name.CALLED, Name.WINDING, Name.HOLDING, Name.IN_THE_AIR, Name.LANDED, Name.OFFICIAL);

    public PhaseStrip {
        steps = List.copyOf(steps);
    }

    /** At practice nobody is called; elsewhere the window opens at an official's word. */
    public static PhaseStrip of(LiveAttempt attempt) {
        DayKind day = attempt.day();
        AttemptPhase phase = attempt.phase();
        Name at = onTheWay(phase.name());
        List<Step> steps = new ArrayList<>();
        for (Name step : day == DayKind.PRACTICE ? WAY.subList(1, WAY.size()) : WAY) {
            if (step == Name.CALLED && day == DayKind.VISITING) {
                steps.addAll(untilTheWindowOpens(attempt, at));
                continue;
            }
            boolean here = step == at;
            steps.add(new Step(
                    here ? phase.name() : step,
                    mark(step, at, phase),
                    here ? PhaseWords.of(attempt) : words(step, attempt)));
        }
        return new PhaseStrip(steps);
    }

    /** Called, and then the window; who flew without anybody tapping it has no such step. */
    private static List<Step> untilTheWindowOpens(LiveAttempt attempt, Name at) {
        boolean open = attempt.windowOpenMs() != null;
        boolean here = at == Name.CALLED;
        Mark called = mark(Name.CALLED, at, attempt.phase());
        Step call =
                new Step(Name.CALLED, here && open ? Mark.DONE : called, PhaseWords.bare(Name.CALLED, attempt.day()));
        if (!open && WAY.indexOf(at) > WAY.indexOf(Name.HOLDING)) {
            return List.of(call);
        }
        Mark window = !open ? Mark.LATER : here ? Mark.NOW : Mark.DONE;
        return List.of(call, new Step(Name.CALLED, window, PhaseWords.WINDOW_OPEN));
    }

    /** Of a step that is done, or comes. */
    private static String words(Name step, LiveAttempt attempt) {
        return step == Name.WINDING ? PhaseWords.winding(attempt.wind()) : PhaseWords.bare(step, attempt.day());
    }

    /** The exits stand in the place of the step in which they happen. */
    private static Name onTheWay(Name phase) {
        return switch (phase) {
            case BROKE, RUN_BACK, ABANDONED -> Name.WINDING;
            case VOID -> Name.LANDED;
            default -> phase;
        };
    }

    private static boolean isExit(Name phase) {
        return onTheWay(phase) != phase;
    }

    private static Mark mark(Name step, Name at, AttemptPhase phase) {
        int here = WAY.indexOf(at);
        int there = WAY.indexOf(step);
        boolean settled = phase instanceof AttemptPhase.Official official && official.missing() == 0;
        if (there < here || there == here && settled) {
            return Mark.DONE;
        }
        if (there > here) {
            return Mark.LATER;
        }
        return isExit(phase.name()) ? Mark.EXIT : Mark.NOW;
    }
}
