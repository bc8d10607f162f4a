package org.skeinday.attempt.store;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.HallStopped;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.WindStore;

/**
 * A motor with turns on that no attempt has in hand: wound on the bench, for practice, or until it breaks.
 *
 * @param wind the one that a reader taps or tapped; null where the bench alone says that it is wound
 */
public record WoundAlone(MotorLife life, @Nullable Wind wind) {
    /** Own default: a wind of which nobody said that it stopped is over by then. */
    public static final long FORGOTTEN_MS = 3_600_000;

    public MotorAdded motor() {
        return life.motor();
    }

    /** Whether it is known to be wound at this winding place. @param station id */
    public boolean isAt(String station) {
        return wind != null && station.equals(wind.begun().stationId());
    }

    /** While the hall stands still nothing is forgotten: a wind is as old as it was when the hall was stopped. */
    public static List<WoundAlone> since(Tx tx, HallStopped stop) {
        return now(tx, stop.eventId(), stop.atMs());
    }

    /** Whether only a reader said that it is wound: as the bench has it no turns are on. */
    public boolean isOnlyCranked() {
        return !life.stage().isLoaded();
    }

    /** @param atMs winds that were begun long before are forgotten ones */
    public static List<WoundAlone> now(Tx tx, String event, long atMs) {
        Set<String> inHand = MotorsInHand.byMotor(tx, event).keySet();
        Map<String, Wind> last = new HashMap<>();
        WindStore.aloneSince(tx, atMs - FORGOTTEN_MS)
                .forEach(wind -> last.put(wind.begun().motorId(), wind));
        return MotorLifeStore.all(tx).stream()
                .filter(life -> !inHand.contains(life.motor().id()))
                .flatMap(life -> of(life, last.get(life.motor().id())).stream())
                .toList();
    }

    private static Optional<WoundAlone> of(MotorLife life, @Nullable Wind last) {
        @Nullable Wind open = last == null || last.broke().isPresent() || last.counted() != null ? null : last;
        return life.stage().isLoaded() || open != null && isWinding(life, open)
                ? Optional.of(new WoundAlone(life, open))
                : Optional.empty();
    }

    /** Cranked, and nothing was said of its motor since. */
    private static boolean isWinding(MotorLife life, Wind wind) {
        return wind.phase().compareTo(Wind.Phase.STOPPED) < 0
                && (life.step() == null || life.step().atMs() <= wind.begun().atMs());
    }
}
