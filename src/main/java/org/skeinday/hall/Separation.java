package org.skeinday.hall;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;

/**
 * How far things stay away from a stretched motor. All of it can be set; zones are reviewed at the place, not assumed:
 * that a parting line recoils towards and past its ends is known of mooring lines (OCIMF 2015, MAIB digests), their
 * distances are not ours.
 *
 * @param model a model from the line and its ends: 1.2 m, 4 ft (common practice)
 * @param people from the line and its ends: 1.5 m (observers of stretched elastic, school laboratory sheets)
 * @param reader the same for the reader; the needle has to be read from there, so a coach may set less (own default:
 *     as people)
 * @param zoneLength how far past each end nobody stands: 3 m (own default: as far as a motor is commonly stretched)
 * @param zoneHalfWidth of that ground, to each side of the lengthened line: 1 m (own default)
 * @param lanes one lane's line and winder from the other's line: 1.5 m (own default: as people)
 * @param standing the winder's feet past full stretch: 0.5 m (common practice)
 */
public record Separation(
        Length model,
        Length people,
        Length reader,
        Length zoneLength,
        Length zoneHalfWidth,
        Length lanes,
        Length standing) {
    public Separation {
        atMost("A model's distance in mm", model, 20_000);
        atMost("People's distance in mm", people, 20_000);
        atMost("The reader's distance in mm", reader, 20_000);
        atMost("The zone's length in mm", zoneLength, 50_000);
        atMost("The zone's half width in mm", zoneHalfWidth, 20_000);
        atMost("The lanes' distance in mm", lanes, 20_000);
        atMost("The standing room in mm", standing, 5_000);
    }

    private static void atMost(String what, Length length, double mm) {
        Limit.within(what, length.millimetres(), 1, mm);
    }

    public static Separation usual() {
        return new Separation(
                Length.ofMillimetres(1200),
                Length.ofMillimetres(1500),
                Length.ofMillimetres(1500),
                Length.ofMillimetres(3000),
                Length.ofMillimetres(1000),
                Length.ofMillimetres(1500),
                Length.ofMillimetres(500));
    }

    /**
     * @param longestStretch the longest of today's motors at full stretch, λ · L0; null while it is not known
     */
    public Verdict judge(WindingPlace place, @Nullable Length longestStretch) {
        List<Finding> findings = new ArrayList<>();
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
