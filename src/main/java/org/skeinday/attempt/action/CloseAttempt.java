package org.skeinday.attempt.action;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LandedAttempt;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Seen;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.timing.OfficialTime;
import org.skeinday.timing.Rounding;
import org.skeinday.timing.Take;
import org.skeinday.timing.TimeRule;
import org.skeinday.timing.Watches;
import org.skeinday.timing.WatchesRule;
import org.skeinday.units.FlightTime;

/** Closes a landed attempt: its readings become the official time by the event's rule. */
public final class CloseAttempt {
    /**
     * The attempt to close.
     *
     * @param seen what the form showed, readings too: a time is not made from one that nobody has seen
     * @param reason why the time is taken although the watches are in doubt
     */
    public record Close(
            String attempt, @Nullable String seen, @Nullable String reason) {}

    private CloseAttempt() {}

    static Decision decide(Tx tx, ActContext context, Close close) {
        AttemptNow now = AttemptStore.find(tx, close.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        List<ReadingTaken> readings = AttemptStore.readings(tx, now.id());
        Optional<String> changed =
                Seen.parse(close.seen()).flatMap(seen -> seen.changed(new Seen(now.state(), readings.size())));
        if (changed.isPresent()) {
            return new Decision.Outdated(changed.get());
        }
        if (!(Attempt.of(now) instanceof LandedAttempt landed)) {
            return Decision.refused("Only a landed attempt can be closed; this one is "
                    + now.state().word());
        }
        EventAdded event = EventStore.find(tx, now.eventId()).orElseThrow();
        long atMs = context.now().toEpochMilli();
        if (event.kind().equals("visiting")) {
            return announced(tx, landed, readings, atMs);
        }
        List<WatchJudged> judged = AttemptStore.judged(tx, now.id());
        Watches watches = Readings.watches(readings, judged);
        if (watches.counted().isEmpty()) {
            return Decision.refused("No watch has a reading that counts; wait for the timekeepers");
        }
        WatchesRule rule = watchesRule(tx, event);
        List<String> doubts = Readings.doubts(readings, judged, rule);
        String reason = close.reason() == null ? "" : close.reason().strip();
        if (!doubts.isEmpty() && reason.isEmpty()) {
            return Decision.refused(
                    "why",
                    "The watches are in doubt: say why the time is taken all the same. "
                            + (AttemptStore.quietOf(tx, now.id()).isPresent() ? "" : String.join(" ", doubts)));
        }
        if (reason.length() > AttemptDeeds.LONGEST_REASON) {
            return Decision.refused("why", AttemptDeeds.tooLong(reason));
        }
        OfficialTime official;
        try {
            official = watches.reduce(rule.time());
        } catch (IllegalArgumentException e) {
            return Decision.refused("why", String.valueOf(e.getMessage()));
        }
        if (!doubts.isEmpty()) {
            official =
                    new OfficialTime(official.millis(), official.how() + ". Taken by the captain in doubt: " + reason);
        }
        return closed(tx, now.id(), atMs, Fact.of("attempt.closed", landed.close(atMs, official)));
    }

    private static Decision closed(Tx tx, String attempt, long atMs, Fact fact) {
        return new Decision.Decided(
                AttemptDeeds.withQuietEnded(tx, attempt, atMs, fact), Map.of(), AttemptDeeds.TOPICS);
    }

    /** Elsewhere the officials' time counts; our own watches stand beside it. */
    private static Decision announced(Tx tx, LandedAttempt landed, List<ReadingTaken> readings, long atMs) {
        Long ms = AttemptStore.note(tx, landed.id()).announcedMs();
        if (ms == null) {
            return Decision.refused("announced", "Type in the time that the officials have announced");
        }
        String own = Readings.thatCount(readings).stream()
                .map(r -> new FlightTime(r.durationMs()).text(2))
                .collect(Collectors.joining(", "));
        String how = "announced by the officials: " + new FlightTime(ms).text(2)
                + (own.isEmpty() ? "" : "; our watches: " + own);
        return closed(tx, landed.id(), atMs, Fact.of("attempt.closed", new AttemptClosed(landed.id(), atMs, ms, how)));
    }

    /** When this event's watches become a time by themselves. */
    public static WatchesRule watchesRule(Tx tx, EventAdded event) {
        return TermsStore.of(tx, event.id()).watches(event, rule(event));
    }

    /** The event's rule for several watches. */
    public static TimeRule rule(EventAdded event) {
        return new TimeRule(
                Take.valueOf(event.take().toUpperCase(Locale.ROOT)),
                Take.valueOf(event.ifTwo().toUpperCase(Locale.ROOT)),
                Rounding.valueOf(event.rounding().toUpperCase(Locale.ROOT)),
                event.roundToMs(),
                event.roundWatchesFirst());
    }
}
