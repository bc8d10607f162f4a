package org.skeinday.hall;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.skeinday.units.Length;

/**
 * Two lanes against each other: their lines with whoever winds there, and the zones past their ends with the other's zones
 * and the other's walking way.
 */
final class TwoLanes {
    private final Separation separation;
    private final OtherLane other;
    private final Line mine;
    private final Line theirs;

    TwoLanes(Separation separation, Lane lane, OtherLane other) {
        this.separation = separation;
        this.other = other;
        this.mine = Line.of(lane);
        this.theirs = Line.of(other, lane);
    }

    List<Shortfall> findings() {
        List<Shortfall> findings = new ArrayList<>();
        double is = Math.min(way(mine).distanceTo(theirs), mine.distanceTo(way(theirs)));
        double shortBy = separation.lanes().millimetres() - is;
        if (shortBy > Separation.SAME_MM) {
            findings.add(new Shortfall(
                    Rule.LANES_TOO_NEAR,
                    other.name(),
                    "",
                    "this lane",
                    Length.ofMillimetres(shortBy),
                    Length.ofMillimetres(is),
                    separation.lanes()));
        }
        for (End end : End.values()) {
            overlap(end.zone(), corners(mine, end), theirParts(), findings);
        }
        overlap("this lane's walking way", corners(way(mine)), theirZones(), findings);
        return findings;
    }

    /** The deepest of the other's parts, once for each of ours. */
    private void overlap(String ours, List<Spot> shape, Map<String, List<Spot>> parts, List<Shortfall> findings) {
        String deepest = "";
        double depth = Separation.SAME_MM;
        for (Map.Entry<String, List<Spot>> part : parts.entrySet()) {
            double here = Overlap.depth(shape, part.getValue());
            if (here > depth) {
                depth = here;
                deepest = part.getKey();
            }
        }
        if (!deepest.isEmpty()) {
            Length by = Length.ofMillimetres(depth);
            findings.add(
                    new Shortfall(Rule.ZONES_OVERLAP, other.name(), deepest, ours, by, Length.ofMillimetres(0), by));
        }
    }

    private Map<String, List<Spot>> theirParts() {
        Map<String, List<Spot>> parts = theirZones();
        parts.put("its walking way", corners(way(theirs)));
        return parts;
    }

    private Map<String, List<Spot>> theirZones() {
        Map<String, List<Spot>> zones = new TreeMap<>();
        for (End end : End.values()) {
            zones.put(end.theirZone(), corners(theirs, end));
        }
        return zones;
    }

    private Line way(Line line) {
        return line.upToTheFeet(separation.standing().millimetres());
    }

    private List<Spot> corners(Line line, End end) {
        return separation.zone(line, end).corners();
    }

    private static List<Spot> corners(Line line) {
        return List.of(line.mount(), line.winder());
    }
}
