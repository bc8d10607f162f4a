package org.skeinday.evidence;

import org.jspecify.annotations.Nullable;

/**
 * The one rule of what counts: which flights, values and winds may enter averages, fits and forecasts. Whatever learns from
 * the record, says something of it or writes it down asks here.
 */
public final class WhatCounts {
    private WhatCounts() {}

    /**
     * A flight as a whole.
     *
     * @param judged whether a person has said that it does not count, or that it does whatever it touched
     * @param leftOut why that person left it out; empty otherwise
     * @param steered what it was steered with, in words; empty when it flew by itself
     * @param contact what it touched, as marks or cards have it; empty when it touched nothing
     */
    public static Counts flight(boolean judged, String leftOut, String steered, String contact) {
        if (!leftOut.isBlank()) {
            return Counts.leftOut(leftOut);
        }
        if (!steered.isBlank()) {
            return Counts.not(NotCounted.STEERED, steered);
        }
        return judged || contact.isBlank() ? Counts.yes() : Counts.not(NotCounted.UNDECIDED, contact);
    }

    /** One number of a flight. @param doubt why it is unlikely or impossible, in words; empty when it is neither */
    static Counts value(Measured what, @Nullable Double number, ValueMarks marks, String doubt) {
        if (marks.isOffered(what, number)) {
            return Counts.not(NotCounted.OFFERED, "");
        }
        return doubt.isEmpty() || marks.isConfirmed(what, number)
                ? Counts.yes()
                : Counts.not(NotCounted.DOUBTED, doubt);
    }

    /**
     * The turns of a wind.
     *
     * @param counted whether its turns were counted
     * @param paced whether it was cranked to a metronome
     * @param leftOut why a person left it out; empty otherwise
     * @param offered whether a form only proposed its count, and nobody has confirmed it
     * @param doubt why its count is unlikely, in words; empty when it is not, and when somebody confirmed it
     */
    public static Counts turnsOfWind(boolean counted, boolean paced, String leftOut, boolean offered, String doubt) {
        if (!counted) {
            return Counts.not(NotCounted.TURNS_NOT_COUNTED, "");
        }
        if (paced) {
            return Counts.not(NotCounted.TO_A_METRONOME, "");
        }
        if (!leftOut.isBlank()) {
            return Counts.leftOut(leftOut);
        }
        if (offered) {
            return Counts.not(NotCounted.OFFERED, "");
        }
        return doubt.isEmpty() ? Counts.yes() : Counts.not(NotCounted.DOUBTED, doubt);
    }

    /**
     * What was read of a wind.
     *
     * @param turns what its turns are worth: without them the readings say nothing
     * @param offered whether a form only proposed turns between which the readings lie, and nobody has confirmed them
     * @param openDoubts readings that were asked about and of which nobody has said anything
     */
    public static Counts readingsOfWind(Counts turns, boolean offered, int openDoubts) {
        if (turns.isYes() && offered) {
            return Counts.not(NotCounted.OFFERED, "");
        }
        return !turns.isYes() || openDoubts == 0
                ? turns
                : Counts.not(
                        NotCounted.DOUBTED,
                        openDoubts == 1 ? "one reading is asked about" : openDoubts + " readings are asked about");
    }

    /** What was read of a wind of which nobody has said more. */
    public static Counts wind(boolean counted, boolean paced, int openDoubts) {
        return readingsOfWind(turnsOfWind(counted, paced, "", false, ""), false, openDoubts);
    }
}
