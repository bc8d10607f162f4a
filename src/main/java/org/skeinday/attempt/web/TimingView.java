package org.skeinday.attempt.web;

import java.util.List;
import org.skeinday.attempt.FullHands;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.steps.web.StripView;

/**
 * The timekeeper's page in finished words.
 *
 * @param attempt id of the attempt that is to be timed, empty when none was called
 * @param over whether nothing more happens to the attempt by itself
 * @param strip where the attempt stands; no step where none was called
 * @param window with its last call
 * @param isBeforeRelease whether the attempt is called and not released
 * @param recalled whether this watch saw a release that was none: as the captain says, or after its motor broke
 * @param hands of whoever looks: at the motor they have no key here until the release
 * @param broke whether its motor broke before it was released
 * @param heldMs how long a held model is watched until its flight is over, -1 where the clock runs on
 * @param signing the official time to sign here, -1 for none
 * @param aloftMs since when the model flies, epoch ms, where this device has taken its watch since then or would take one now:
 *     only the landing counts; else 0
 * @param slot this device's place, 0 before one was taken
 * @param givenOver whether another device has taken this place over since
 * @param form what was typed last and why it was refused; under "" what belongs to no field
 * @param reading what this device has measured for it, in words empty before
 * @param waits what its time still waits for, and whom; empty for nothing
 * @param others attempts that are under way beside this one
 * @param toSign official times that this device's watches have still to sign, beside the one that is shown
 * @param own this device's other watches, by what their address asks for
 * @param typesTimes how many watches a hand watch may stand for; 0 while none may
 * @param typedSeen when the time of each watch was typed last, as {@code SaidMeanwhile} writes it
 * @param caught whether a time may be the one at the catch
 */
public record TimingView(
        String title,
        String attempt,
        boolean over,
        StripView strip,
        WindowClock window,
        boolean isBeforeRelease,
        boolean recalled,
        boolean broke,
        FullHands hands,
        long heldMs,
        long signing,
        long aloftMs,
        int slot,
        boolean givenOver,
        FormErrors form,
        String reading,
        String waits,
        int typesTimes,
        String typedSeen,
        boolean caught,
        List<Place> places,
        List<ToSign> toSign,
        List<NowView.Choice> own,
        List<NowView.Choice> others) {
    /** @param ms the official time that is signed */
    public record ToSign(String attempt, int slot, String title, String time, long ms) {}

    /** A place to take. @param takenBy in words, empty when it is free */
    public record Place(int slot, String takenBy) {}

    /** Whether this device may still become another watch of the attempt that is shown. */
    public boolean mayChange() {
        return slot > 0
                && !givenOver
                && isBeforeRelease
                && places.stream().anyMatch(place -> place.takenBy().isEmpty());
    }
}
