package org.skeinday.winding;

/**
 * A reading that is asked about after the wind, never during it.
 *
 * @param markId the tap, or what names a reading of the hold, see {@link HeldDoubts}
 * @param words what is doubtful, with numbers
 */
public record Doubt(String markId, Kind kind, String words) {
    /** What is doubtful. */
    public enum Kind {
        /** Down with no step in. */
        FELL,
        /** Up by more than one division at once. */
        JUMPED,
        /** Far above the batch's other motors. */
        ABOVE_BAND,
        /** No mark of this meter. */
        BEYOND_METER,
        /** A typed reading of the hold, off the scale. */
        HELD,
        /** A typed reading of the hold, above the wind's highest torque. */
        HELD_ABOVE_PEAK
    }
}
