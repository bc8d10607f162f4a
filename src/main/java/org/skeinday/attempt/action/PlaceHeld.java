package org.skeinday.attempt.action;

import java.util.Optional;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.Wind;

/**
 * No motor is wound where another has its turns on: two motors do not hang on one hook. A place is taken while something is
 * wound there, held on its meter, broken with nobody looked after, or waits to be run back.
 */
public final class PlaceHeld {
    private PlaceHeld() {}

    /**
     * Why an attempt cannot be wound at its place now, with the way out; empty where it can.
     *
     * @param attempt that is called
     */
    static Optional<String> refused(Tx tx, AttemptNow attempt) {
        return AttemptsWoundAt.of(tx, attempt).flatMap(place -> refused(tx, attempt, place));
    }

    /** The same at a place that somebody names. */
    public static Optional<String> refused(Tx tx, AttemptNow attempt, StationAdded place) {
        if (!WindingGate.isOwn(tx, attempt)) {
            return Optional.empty();
        }
        Stations places = Stations.in(tx, attempt.eventId());
        boolean another = places.all().stream()
                .anyMatch(
                        one -> !one.equals(place) && places.openAt(one, attempt).isEmpty());
        return places.openAt(place, attempt).stream()
                .flatMap(id -> LiveAttempts.evidence(tx, id).stream())
                .filter(other -> isOn(other, another))
                .findFirst()
                .map(other -> words(tx, other.now(), place, another));
    }

    /** @param another whether another place is free */
    private static boolean isOn(AttemptEvidence other, boolean another) {
        AttemptPhase phase = LiveAttempt.of(other).phase();
        return switch (phase.name()) {
            case WINDING, RUN_BACK -> true;
            case BROKE -> !((AttemptPhase.Broke) phase).peopleSafe();
            // where nobody reads it, only the winder knows whether it hangs there still: with one place the day must go
            // on
            case HOLDING -> other.presentWind().map(PlaceHeld::isOnMeter).orElse(another);
            default -> false;
        };
    }

    private static boolean isOnMeter(Wind wind) {
        return wind.phase() != Wind.Phase.OFF_METER;
    }

    private static String words(Tx tx, AttemptNow other, StationAdded place, boolean another) {
        String title = EntryStore.find(tx, other.entryId()).orElseThrow().name() + ", "
                + other.number().words();
        return title + " has its motor at " + place.name() + ": "
                + (another ? "choose another winding place on Now, or wait" : "wait")
                + " until that is off the meter, run back or released";
    }
}
