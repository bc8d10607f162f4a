package org.skeinday.attempt.action;

import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.units.FlightTime;

/** The time that officials elsewhere announced for an attempt; from then on the time to protest runs. */
public final class AnnounceTime {
    /**
     * @param time as typed, for example 1:43.6
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them; null where none were
     * @param seen when one was noted last as the form showed it; null or empty where it showed nothing
     */
    public record Announce(
            String attempt,
            String time,
            @Nullable String insist,
            @Nullable String seen) {}

    private AnnounceTime() {}

    static Decision decide(Tx tx, ActContext context, Announce announce) {
        AttemptNow now = AttemptStore.find(tx, announce.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        if (now.state() != State.LANDED && now.state() != State.RELEASED) {
            return Decision.refused(PhaseGate.wrong(tx, context, now, "A time is announced for a flight"));
        }
        FlightTime time;
        try {
            time = FlightTime.parse(announce.time());
        } catch (IllegalArgumentException e) {
            return Decision.refused("announced", String.valueOf(e.getMessage()));
        }
        return SaidMeanwhile.since(tx, SaidMeanwhile.announced(now.id()), announce.seen())
                .or(() -> AskedOnce.aboutTime(tx, now.id(), time, announce.insist(), "announced"))
                .orElseGet(() -> noted(tx, context, now, time));
    }

    private static Decision noted(Tx tx, ActContext context, AttemptNow now, FlightTime time) {
        AttemptNoted before = AttemptStore.note(tx, now.id());
        Long first = before.announcedAtMs(); // a slip of the keys that is put right gives no new time to protest
        AttemptNoted noted =
                before.announced(time.millis(), first == null ? context.now().toEpochMilli() : first);
        return Decision.decided(
                AttemptActions.TOPICS,
                Fact.of("attempt.noted", noted),
                SaidMeanwhile.told(context, SaidMeanwhile.announced(now.id()), AttemptAct.ANNOUNCE.words()));
    }
}
