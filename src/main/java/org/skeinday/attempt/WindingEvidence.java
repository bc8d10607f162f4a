package org.skeinday.attempt;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.skeinday.contest.EventAdded;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;

/**
 * Everything in a record, or in files, that tells of windings.
 *
 * @param counted the turns of winds, by the wind's id, as far as somebody counted
 * @param offered ids of attempts, practice flights and winds whose crank turns a form only proposed: what somebody counted
 *     goes before them
 * @param placeRatios by attempt id: motor turns to one crank turn of the winder at its place, as far as that is known
 * @param later what files of a part of a record told of uses that stand in no row
 */
public record WindingEvidence(
        List<EventAdded> events,
        List<AttemptImported> attempts,
        List<PracticeFlown> flights,
        List<WindBegun> winds,
        Map<String, WindCounted> counted,
        List<TurnsRunBack> runBacks,
        Set<String> offered,
        Map<String, Double> placeRatios,
        List<LaterUses> later) {
    /** Of files, which carry attempts with their places and flights alone. */
    public static WindingEvidence ofFiles(
            List<EventAdded> events,
            List<AttemptImported> attempts,
            List<PracticeFlown> flights,
            List<AttemptStation> places) {
        Map<String, Double> ratios = new HashMap<>();
        for (AttemptStation at : places) {
            Optional.ofNullable(at.winderRatio()).ifPresent(ratio -> ratios.put(at.attemptId(), ratio));
        }
        return new WindingEvidence(
                events, attempts, flights, List.of(), Map.of(), List.of(), Set.of(), ratios, List.of());
    }

    /** The same with what files told of uses that stand in no row. */
    public WindingEvidence with(List<LaterUses> told) {
        return new WindingEvidence(events, attempts, flights, winds, counted, runBacks, offered, placeRatios, told);
    }
}
