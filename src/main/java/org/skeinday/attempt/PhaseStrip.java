package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.attempt.AttemptPhase.Name;

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
        LATER
    }

    /** @param wind which wind it is where the step is winding, 0 for every other step */
    public record Step(Name phase, Mark mark, int wind) {}

    private static final List<Name> WAY =
            List.of(Name.CALLED, Name.WINDING, Name.HOLDING, Name.IN_THE_AIR, Name.LANDED, Name.OFFICIAL);

    /** @param practice where nobody is called */
    public static PhaseStrip of(LiveAttempt attempt, boolean practice) {
        AttemptPhase phase = attempt.phase();
        Name at = onTheWay(phase.name());
        List<Step> steps = new ArrayList<>();
        for (Name step : practice ? WAY.subList(1, WAY.size()) : WAY) {
            steps.add(new Step(shown(step, at, phase), mark(step, at, phase), step == Name.WINDING ? wind(attempt) : 0));
        }
        return new PhaseStrip(steps);
    }

    /** The exits stand in the place of the step in which they happened. */
    private static Name onTheWay(Name phase) {
        return switch (phase) {
            case BROKE, RUN_BACK, ABANDONED -> Name.WINDING;
            case VOID -> Name.LANDED;
            default -> phase;
        };
    }

    private static Name shown(Name step, Name at, AttemptPhase phase) {
        return step == at ? phase.name() : step;
    }

    private static Mark mark(Name step, Name at, AttemptPhase phase) {
        int here = WAY.indexOf(at);
        int there = WAY.indexOf(step);
        if (there < here || there == here && phase.name() == Name.OFFICIAL) {
            return Mark.DONE;
        }
        return there == here ? Mark.NOW : Mark.LATER;
    }

    /** A wind that is to come counts as the next one. */
    private static int wind(LiveAttempt attempt) {
        return attempt.phase().name() == Name.CALLED ? attempt.winds() + 1 : Math.max(1, attempt.winds());
    }
}
