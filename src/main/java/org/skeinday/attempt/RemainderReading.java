package org.skeinday.attempt;

import org.skeinday.evidence.Counts;
import org.skeinday.units.Preconditions;

/** What the turns left after landing suggest (common practice; the limit for "many" is a default, editable). */
public enum RemainderReading {
    MANY("many left: the section is too small for this rotor; shorter and thicker at the same mass, or less pitch"),
    SOME("some left: motor and rotor suit each other"),
    NONE("none left: it ran out; longer and thinner, or more pitch"),
    SAYS_NOTHING("the flight was spoilt: the remainder says nothing");

    /** Share of the turns at launch from which the remainder counts as many. */
    public static final double MANY_FROM = 0.20;

    private final String words;

    RemainderReading(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** @param manyFrom above 0, below 1 */
    public static RemainderReading of(FlightFigures flight, Counts counts, double manyFrom) {
        Preconditions.share("The limit for many", manyFrom);
        if (!counts.isYes()) {
            return SAYS_NOTHING;
        }
        if (flight.remaining() == 0) {
            return NONE;
        }
        return flight.shareRemaining() >= manyFrom ? MANY : SOME;
    }
}
