package org.skeinday.attempt.web;

import java.util.List;

/**
 * The timekeeper's page in finished words.
 *
 * @param attempt id of the attempt that is to be timed, empty when none was called
 * @param slot this device's place, 0 before one was taken
 * @param givenOver whether another device has taken this place over since
 * @param readings what this device has measured for it, in words, empty before
 */
public record TimingView(
        String title, String attempt, int slot, boolean givenOver, String message, String reading, List<Place> places) {
    /** A place to take. @param takenBy in words, empty when it is free */
    public record Place(int slot, String takenBy) {}
}
