package org.skeinday.standing;

import org.skeinday.contest.FlightRules.IfShort;
import org.skeinday.units.Preconditions;

/**
 * How many flights an entry has, and which flights are official. Limits change from year to year: all are settings.
 *
 * @param flights official flights of each entry, 1 to 50
 * @param minimumMs from this time on a flight is official, 0 to 3,600,000 ms
 * @param repeatsPerFlight how often one official flight may be tried again after a shorter one, 0 to 10
 * @param repeatsInAll how many such repeats an entry has in all, zero or more
 * @param ifShortAgain what a shorter flight is when no repeat is left
 */
public record FlightsRule(int flights, long minimumMs, int repeatsPerFlight, int repeatsInAll, IfShort ifShortAgain) {
    public FlightsRule {
        Preconditions.within("Official flights", flights, 1, 50);
        Preconditions.within("The minimum in ms", minimumMs, 0, 3_600_000);
        Preconditions.within("Repeats of a flight", repeatsPerFlight, 0, 10);
        Preconditions.within("Repeats in all", repeatsInAll, 0, 500);
    }
}
