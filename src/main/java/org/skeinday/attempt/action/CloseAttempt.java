package org.skeinday.attempt.action;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LandedAttempt;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Seen;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.standing.CollisionRule;
import org.skeinday.timing.OfficialTime;
import org.skeinday.timing.TimeRule;
import org.skeinday.timing.WatchReading;
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
        List<ReadingTaken> readings = WatchStore.readings(tx, now.id());
        LiveAttempt live = LiveAttempts.find(tx, now.id()).orElseThrow();
        Optional<String> changed =
                Seen.parse(close.seen()).flatMap(seen -> seen.changed(WatchStore.seen(tx, now), live));
        if (changed.isPresent()) {
            return new Decision.Outdated(changed.get());
        }
        if (!(Attempt.of(now) instanceof LandedAttempt landed)) {
            return PhaseGate.refused(tx, context, live, AttemptAct.CLOSE).orElseThrow();
        }
        EventAdded event = EventStore.find(tx, now.eventId()).orElseThrow();
        long atMs = context.now().toEpochMilli();
        if (event.dayKind() == DayKind.VISITING) {
            return announced(tx, context, now, readings, atMs);
        }
        TimeDoubts doubted = TimeDoubts.of(tx, now, event);
        if (doubted.watches().counted().isEmpty()) {
            return Decision.refused(
                    readings.stream().anyMatch(ReadingTaken::isPartial)
                            ? "A watch that was taken over in the air never counts by itself. Say of it that it counts, and why,"
                                    + " or type the time of a hand watch"
                            : "No watch has a reading that counts; wait for the timekeepers");
        }
        Optional<Decision> collided = collided(tx, now, atMs);
        if (collided.isPresent()) {
            return collided.get();
        }
        List<String> doubts = doubted.found();
        String reason = close.reason() == null ? "" : close.reason().strip();
        if (!doubts.isEmpty() && reason.isEmpty()) {
            return Decision.refused(
                    "why",
                    "The watches are in doubt: say why the time is taken all the same. "
                            + (AttemptStore.quietOf(tx, now.id()).isPresent() ? "" : String.join(" ", doubts)));
        }
        if (reason.length() > AttemptActions.LONGEST_REASON) {
            return Decision.refused("why", AttemptActions.tooLong(reason));
        }
        OfficialTime official;
        try {
            official = doubted.watches().reduce(doubted.rule().time());
        } catch (IllegalArgumentException e) {
            return Decision.refused("why", String.valueOf(e.getMessage()));
        }
        String how = official.how()
                + doubted.verdict().map(v -> ". " + v.words()).orElse("")
                + (doubts.isEmpty() ? "" : ". Taken by the captain in doubt: " + reason);
        var taken = new OfficialTime(official.millis(), AttemptClosed.cut(how));
        String slots = doubted.watches().counted().stream()
                .map(WatchReading.Counted::watch)
                .collect(Collectors.joining(","));
        return closed(
                tx, context, now, atMs, Fact.of("attempt.closed", landed.close(atMs, taken, context.person(), slots)));
    }

    /** While the entry may still choose nothing is taken; who flies again has no time. */
    private static Optional<Decision> collided(Tx tx, AttemptNow now, long atMs) {
        FlightRules rules = FlightRulesStore.of(tx, now.eventId());
        return ResultRecord.collision(tx, now.id())
                .flatMap(told -> told.holds(atMs, rules)
                        .map(choice -> choice == CollisionRule.Choice.AGAIN
                                ? Optional.of(
                                        Decision.refused(
                                                "After the collision the entry flies again: give this attempt up, to be flown again"))
                                : Optional.<Decision>empty())
                        .orElseGet(() -> Optional.of(
                                Decision.refused(told.at(atMs, rules).words() + ". Wait for the choice."))));
    }

    private static Decision closed(Tx tx, ActContext context, AttemptNow attempt, long atMs, Fact fact) {
        List<Fact> facts = AttemptActions.withQuietEnded(tx, attempt.id(), atMs, fact);
        facts.add(JudgeFlight.fact(tx, context, attempt));
        facts.add(PhaseGate.acted(context, attempt.id(), AttemptAct.CLOSE));
        return new Decision.Decided(facts, Map.of(), AttemptActions.TOPICS);
    }

    /** Elsewhere the officials' time counts; our own watches stand beside it. */
    private static Decision announced(
            Tx tx, ActContext context, AttemptNow landed, List<ReadingTaken> readings, long atMs) {
        Long ms = AttemptStore.note(tx, landed.id()).announcedMs();
        if (ms == null) {
            return Decision.refused("announced", "Type in the time that the officials have announced");
        }
        String own = Readings.thatCount(readings).stream()
                .map(r -> new FlightTime(r.durationMs()).text(2))
                .collect(Collectors.joining(", "));
        String how = "announced by the officials: " + new FlightTime(ms).text(2)
                + (own.isEmpty() ? "" : "; our watches: " + own);
        return closed(
                tx,
                context,
                landed,
                atMs,
                Fact.of("attempt.closed", new AttemptClosed(landed.id(), atMs, ms, how, context.person(), null)));
    }

    /** When this event's watches become a time by themselves. */
    public static WatchesRule watchesRule(Tx tx, EventAdded event) {
        return TermsStore.of(tx, event.id()).watches(event, rule(event));
    }

    /** The event's rule for several watches. */
    public static TimeRule rule(EventAdded event) {
        return new TimeRule(
                event.takeRule(),
                event.ifTwoRule(),
                event.roundingRule(),
                event.roundToMs(),
                event.roundWatchesFirst());
    }
}
