package org.skeinday.timing;

import org.skeinday.units.Preconditions;

/**
 * When the watches of one flight become its time by themselves, and when a person decides.
 *
 * @param wanted watches that the rules ask for, 1 to 9
 * @param spreadMs 0 to 60,000 ms: watches further apart are put before a person
 * @param ifOne what to do when one watch is left of several
 */
public record WatchesRule(TimeRule time, int wanted, long spreadMs, IfOne ifOne) {
    /** Own default: start–stop varies by 0.10 s (Am. J. Phys. 87, 110), so that 0.3 s are about two such differences. */
    public static final long SPREAD_MS = 300;

    /** One watch left of several. */
    public enum IfOne {
        PERSON,
        /** Its time counts. */
        TAKE
    }

    public WatchesRule {
        Preconditions.within("The number of watches", wanted, 1, 9);
        Preconditions.within("The spread limit", spreadMs, 0, 60_000, "ms");
    }

    /** With the own defaults: 0.3 s, and a person when one watch is left. */
    public static WatchesRule of(TimeRule time, int wanted) {
        return new WatchesRule(time, wanted, SPREAD_MS, IfOne.PERSON);
    }
}
