package org.skeinday.attempt;

import org.skeinday.units.Preconditions;

/**
 * Which use of its motor a flight was, as a file says it: of a part of a record its rows alone do not tell it.
 *
 * @param flightId of an attempt or a practice flight
 * @param number from 1 to {@value #MOST}; of one on part turns that of the use after it
 */
public record UseNumber(String flightId, String motorId, int number) {
    public static final int MOST = 9_999;

    public UseNumber {
        Preconditions.filled("The flight", flightId);
        Preconditions.filled("The motor", motorId);
        Preconditions.within("Which use of its motor it was", number, 1, MOST);
    }
}
