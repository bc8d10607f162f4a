package org.skeinday.dayplan;

import org.skeinday.units.Preconditions;

/**
 * How long to search. Work is the solver's own count, 1 being about ten seconds on a small laptop, and the same on every
 * run: the clock never decides which plan is found.
 *
 * @param proofWork for windows and the headline, more than 0
 * @param goalWork for each further goal, more than 0
 */
public record Effort(double proofWork, double goalWork) {
    /** For what is known to have an answer. */
    static final double UNTIL_SURE = 1000;

    public Effort {
        Preconditions.positive("Work for the proof", proofWork);
        Preconditions.positive("Work for the goal", goalWork);
    }

    /** At the pages: a day of usual size within the second, an overfull one given up after a few. */
    public static Effort live() {
        return new Effort(0.4, 0.006);
    }

    /** On the command line, where nobody waits in the hall. */
    public static Effort patient() {
        return new Effort(12, 0.3);
    }
}
