package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.contest.StationAdded;

/**
 * Fact {@code attempt.station}: this attempt is wound at this winding place, with its meter and its winder as they are then: a
 * place that is described anew later changes nothing of what was wound there.
 *
 * @param stationId the place; null where a file names one that is not prepared here
 * @param name of the place, null in records made before it was kept: then the place is as it is described now
 * @param meter null where none is read, as are all figures of it that are not known
 * @param divisionNmm torque from one mark to the next in N·mm, as typed in {@code divisionTyped}
 * @param fullScaleNmm where its scale ends in N·mm, as typed in {@code fullScaleTyped}
 * @param winderRatio motor turns to one crank turn, null where nobody counted them: then the event's holds
 * @param outputTurns which way the hook turns for the crank, a word of {@link org.skeinday.contest.WinderOutput}
 */
public record AttemptStation(
        String attemptId,
        @Nullable String stationId,
        @Nullable String name,
        @Nullable String meter,
        @Nullable Double divisionNmm,
        @Nullable String divisionTyped,
        @Nullable Double fullScaleNmm,
        @Nullable String fullScaleTyped,
        @Nullable Double winderRatio,
        @Nullable String outputTurns) {
    /** As it is described now. */
    public static AttemptStation of(String attempt, StationAdded at) {
        return new AttemptStation(
                attempt,
                at.id(),
                at.name(),
                at.meter(),
                at.divisionNmm(),
                at.divisionTyped(),
                at.fullScaleNmm(),
                at.fullScaleTyped(),
                at.winderRatio(),
                at.outputTurns());
    }
}
