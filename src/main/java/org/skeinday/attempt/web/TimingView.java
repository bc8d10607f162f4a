package org.skeinday.attempt.web;

import java.util.List;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.steps.web.StripView;

/**
 * The timekeeper's page in finished words.
 *
 * @param attempt id of the attempt that is to be timed, empty when none was called
 * @param state of the attempt, in the words of the record
 * @param strip where the attempt stands; no step where none was called
 * @param window with its last call
 * @param recalled whether the captain says that it was not released after all
 * @param heldMs how long a held model is watched until its flight is over, -1 where the clock runs on
 * @param signing the official time to sign here, -1 for none
 * @param slot this device's place, 0 before one was taken
 * @param givenOver whether another device has taken this place over since
 * @param form what was typed last and why it was refused; under "" what belongs to no field
 * @param reading what this device has measured for it, in words empty before
 * @param waits what its time still waits for, and whom; empty for nothing
 * @param others attempts that are under way beside this one
 * @param own this device's other watches, by what their address asks for
 * @param typesTimes how many watches a hand watch may stand for; 0 while none may
 * @param caught whether a time may be the one at the catch
 */
public record TimingView(
        String title,
        String attempt,
        String state,
        StripView strip,
        WindowClock window,
        boolean recalled,
        long heldMs,
        long signing,
        int slot,
        boolean givenOver,
        FormErrors form,
        String reading,
        String waits,
        int typesTimes,
        boolean caught,
        List<Place> places,
        List<NowView.Choice> own,
        List<NowView.Choice> others) {
    /** A place to take. @param takenBy in words, empty when it is free */
    public record Place(int slot, String takenBy) {}
}
