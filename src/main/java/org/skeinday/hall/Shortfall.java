package org.skeinday.hall;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;
import org.skeinday.units.UnitSystem;

/**
 * One thing that is too close to another, or too short.
 *
 * @param what as the coach calls it
 * @param part of it that is too close, such as a zone of another lane; empty for the whole
 * @param against the line, an end, a zone, another lane
 * @param shortBy by how much: the least way that would mend it, above zero
 * @param is the distance that was found
 * @param least the distance that the rule asks for
 */
public record Shortfall(Rule rule, String what, String part, String against, Length shortBy, Length is, Length least) {
    public Shortfall {
        Preconditions.filled("What is too close", what);
        Preconditions.filled("What it is too close to", against);
        Preconditions.within("By how much in mm", shortBy.millimetres(), Double.MIN_VALUE, Spot.FURTHEST_MM * 3);
    }

    /** {@code shortBy} in whole millimetres, up: moved by so much it is right. */
    public long shortByMm() {
        return (long) Math.ceil(shortBy.millimetres() - Separation.SAME_MM);
    }

    /** What is wrong and by how much, in one sentence; the reason is the rule's. */
    public String text(UnitSystem units) {
        String by = by(units);
        return switch (rule) {
            case MODEL_TOO_NEAR, PERSON_TOO_NEAR, READER_TOO_NEAR, LANES_TOO_NEAR ->
                what + " is " + by + " too close to " + against + ": at least " + units.length(least) + ".";
            case IN_LINE_WITH_MOUNT, IN_LINE_WITH_WINDER ->
                what + " stands in line with " + against + ": " + by + " to go.";
            case READER_BEHIND_METER -> what + " stands " + by + " behind the meter: go beside the line.";
            case ZONES_OVERLAP ->
                what + (part.isEmpty() ? "" : ": " + part) + " and " + against + " overlap by " + by + ".";
            case LANE_TOO_SHORT ->
                what + " is " + by + " shorter than today's longest stretch of " + units.length(least) + ".";
            case NO_STANDING_ROOM -> what + " has " + by + " too little room behind the winder.";
        };
    }

    /** Rounded up in the last place that the unit shows, so that it never says nothing. */
    private String by(UnitSystem units) {
        return units.isMetric()
                ? units.length(Length.ofMillimetres(Math.max(1, shortByMm())))
                : units.length(Length.ofInches(
                        BigDecimal.valueOf(Math.max(1, shortBy.millimetres() - Separation.SAME_MM) / 25.4)
                                .setScale(1, RoundingMode.UP)
                                .doubleValue()));
    }
}
