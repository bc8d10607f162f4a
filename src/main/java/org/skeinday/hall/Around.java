package org.skeinday.hall;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.units.Length;

/** One thing against one lane: from the line and its ends, and for people not in line with either end. */
record Around(Separation separation, Lane lane) {
    List<Shortfall> of(Placed placed) {
        List<Shortfall> findings = new ArrayList<>();
        Spot spot = placed.at().on(lane);
        switch (placed.kind()) {
            case STAND -> near(placed, spot, Rule.MODEL_TOO_NEAR, separation.model(), findings);
            case SPECTATOR, HELPER -> near(placed, spot, Rule.PERSON_TOO_NEAR, separation.people(), findings);
            case READER -> {
                near(placed, spot, Rule.READER_TOO_NEAR, separation.reader(), findings);
                behindMeter(placed, spot, findings);
            }
        }
        if (placed.kind().isPerson()) {
            inLine(placed, spot, findings);
        }
        return findings;
    }

    private void near(Placed placed, Spot spot, Rule rule, Length least, List<Shortfall> findings) {
        Line line = Line.of(lane);
        double is = line.distanceTo(spot);
        double shortBy = least.millimetres() - is;
        if (shortBy > Separation.SAME_MM) {
            findings.add(new Shortfall(
                    rule,
                    placed.name(),
                    "",
                    line.nearest(spot),
                    Length.ofMillimetres(shortBy),
                    Length.ofMillimetres(is),
                    least));
        }
    }

    private void inLine(Placed placed, Spot spot, List<Shortfall> findings) {
        for (End end : End.values()) {
            double depth = separation.zone(Line.of(lane), end).depth(spot);
            if (depth > Separation.SAME_MM) {
                findings.add(new Shortfall(
                        end.rule(),
                        placed.name(),
                        "",
                        end.words(),
                        Length.ofMillimetres(depth),
                        Length.ofMillimetres(Line.of(lane).besideMm(spot)),
                        separation.zoneHalfWidth()));
            }
        }
    }

    private void behindMeter(Placed placed, Spot spot, List<Shortfall> findings) {
        double behind = Line.of(lane).pastMm(End.MOUNT, spot);
        if (behind > Separation.SAME_MM) {
            findings.add(new Shortfall(
                    Rule.READER_BEHIND_METER,
                    placed.name(),
                    "",
                    "the meter",
                    Length.ofMillimetres(behind),
                    Length.ofMillimetres(0),
                    Length.ofMillimetres(0)));
        }
    }
}
