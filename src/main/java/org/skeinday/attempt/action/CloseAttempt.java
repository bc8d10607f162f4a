package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.timing.OfficialTime;
import org.skeinday.timing.Rounding;
import org.skeinday.timing.Take;
import org.skeinday.timing.TimeRule;
import org.skeinday.units.FlightTime;

/** Closes a landed attempt: its readings become the official time by the event's rule. */
public final class CloseAttempt {
    /** The attempt to close. */
    public record Close(String attempt) {}

    private CloseAttempt() {}

    static Decision decide(Tx tx, ActContext context, Close close) {
        AttemptNow attempt = AttemptStore.find(tx, close.attempt()).orElse(null);
        if (attempt == null) {
            return Decision.refused("There is no such attempt");
        }
        if (!attempt.state().mayBecome(State.CLOSED)) {
            return Decision.refused("Only a landed attempt can be closed; this one is "
                    + attempt.state().word());
        }
        List<FlightTime> times = last(AttemptStore.readings(tx, attempt.id()));
        if (times.isEmpty()) {
            return Decision.refused("No watch has a reading yet; wait for the timekeepers");
        }
        EventAdded event = EventStore.find(tx, attempt.eventId()).orElseThrow();
        OfficialTime official = OfficialTime.reduce(times, rule(event));
        var fact = new AttemptClosed(attempt.id(), context.now().toEpochMilli(), official.millis(), official.how());
        return Decision.decided(AttemptDeeds.TOPICS, Fact.of("attempt.closed", fact));
    }

    /** Of each timekeeper the last reading; those before it stay in the record. */
    static List<FlightTime> last(List<ReadingTaken> readings) {
        Map<Integer, FlightTime> bySlot = new TreeMap<>();
        readings.forEach(r -> bySlot.put(r.slot(), new FlightTime(r.durationMs())));
        return new ArrayList<>(bySlot.values());
    }

    static TimeRule rule(EventAdded event) {
        return new TimeRule(
                Take.valueOf(event.take().toUpperCase(Locale.ROOT)),
                Take.valueOf(event.ifTwo().toUpperCase(Locale.ROOT)),
                Rounding.valueOf(event.rounding().toUpperCase(Locale.ROOT)),
                event.roundToMs(),
                event.roundWatchesFirst());
    }
}
