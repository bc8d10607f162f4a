package org.skeinday.hall;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;

/**
 * How far things stay away from a stretched motor; what is usual, and where it comes from, says {@link Distance}.
 *
 * @param model a model from the line and its ends
 * @param people from the line and its ends
 * @param reader the same for the reader
 * @param zoneLength how far past each end nobody stands
 * @param zoneHalfWidth of that ground, to each side of the lengthened line
 * @param lanes one lane's line and winder from the other's line
 * @param standing the winder's feet past full stretch
 */
public record Separation(
        Length model,
        Length people,
        Length reader,
        Length zoneLength,
        Length zoneHalfWidth,
        Length lanes,
        Length standing) {
    /** What counts as exactly at a limit, mm: far below any tape, above the noise of binary fractions. */
    static final double SAME_MM = 0.01;

    public Separation {
        Distance.MODEL.check(model);
        Distance.PEOPLE.check(people);
        Distance.READER.check(reader);
        Distance.PAST_END.check(zoneLength);
        Distance.PAST_END_BESIDE.check(zoneHalfWidth);
        Distance.LANES.check(lanes);
        Distance.STANDING.check(standing);
    }

    public static Separation usual() {
        return with(Map.of());
    }

    /** @param set those that differ from the usual */
    public static Separation with(Map<Distance, Length> set) {
        Function<Distance, Length> of = d -> set.getOrDefault(d, d.usual());
        return new Separation(
                of.apply(Distance.MODEL),
                of.apply(Distance.PEOPLE),
                of.apply(Distance.READER),
                of.apply(Distance.PAST_END),
                of.apply(Distance.PAST_END_BESIDE),
                of.apply(Distance.LANES),
                of.apply(Distance.STANDING));
    }

    /**
     * @param longestStretch the longest of today's motors at full stretch, λ · L0; null while it is not known
     */
    public Verdict judge(WindingPlace place, @Nullable Length longestStretch) {
        List<Shortfall> findings = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        new LaneLength(this, place, longestStretch).judge(findings, unknown);
        for (Placed placed : place.placed()) {
            placed.at()
                    .cannotMeet(place.lane())
                    .ifPresentOrElse(
                            why -> unknown.add(placed.name() + ": " + why),
                            () -> findings.addAll(new Around(this, place.lane()).of(placed)));
        }
        for (OtherLane other : place.others()) {
            other.cannotMeet(place.lane())
                    .ifPresentOrElse(
                            why -> unknown.add(other.name() + ": " + why),
                            () -> findings.addAll(new TwoLanes(this, place.lane(), other).findings()));
        }
        if (place.placed().isEmpty()) {
            unknown.add("nothing beside the line is measured yet");
        }
        return new Verdict(findings, unknown);
    }

    EndZone zone(Line line, End end) {
        return new EndZone(line, end, zoneLength.millimetres(), zoneHalfWidth.millimetres());
    }
}
