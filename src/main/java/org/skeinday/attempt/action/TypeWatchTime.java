package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.JudgedReadings;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.timing.HoldRule;
import org.skeinday.units.FlightTime;

/**
 * The time of a hand watch, typed in by whoever has it: of an attempt released or landed by whoever, before its time is
 * official and after. In the air it says that the model has landed; an official time is changed by opening it again only.
 * It stands in place of what was typed for that watch before; what a device measured stays beside it.
 */
public final class TypeWatchTime {
    /**
     * @param time as typed, for example 1:43.62
     * @param at catch where the watch showed it when the model was caught, none where it has no time of the catch; else the
     *     landing
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them; null where none were
     * @param seen when a time of this watch was typed last as the form showed it; null or empty where it showed nothing
     */
    public record Typed(
            String attempt,
            int slot,
            String time,
            @Nullable String at,
            @Nullable String insist,
            @Nullable String seen) {}

    private TypeWatchTime() {}

    static Decision decide(Tx tx, ActContext context, Typed typed) {
        LiveAttempt live = LiveAttempts.find(tx, typed.attempt()).orElse(null);
        if (live == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        return PhaseGate.refused(tx, context, live, AttemptAct.TYPE_TIME)
                .orElseGet(() -> typed(tx, context, live, typed));
    }

    private static Decision typed(Tx tx, ActContext context, LiveAttempt live, Typed typed) {
        AttemptNow now = AttemptStore.find(tx, typed.attempt()).orElseThrow();
        int timekeepers = EventStore.find(tx, now.eventId()).orElseThrow().timekeepers();
        if (typed.slot() < 1 || typed.slot() > timekeepers) {
            return Decision.refused(
                    "typed-slot",
                    "The rules ask for watch 1 to " + timekeepers + ", but this was watch " + typed.slot());
        }
        Optional<Decision> changed = SaidMeanwhile.since(tx, SaidMeanwhile.watch(now.id(), typed.slot()), typed.seen());
        if (changed.isPresent()) {
            return changed.get();
        }
        if (CatchOfWatch.NONE.equals(typed.at())) {
            return CatchOfWatch.none(tx, context, live, typed.slot());
        }
        FlightTime time;
        try {
            time = FlightTime.parse(typed.time());
        } catch (IllegalArgumentException e) {
            return Decision.refused("typed", String.valueOf(e.getMessage()));
        }
        if (time.millis() > ReadingTaken.LONGEST_MS) {
            return Decision.refused("typed", "A flight lasts 2 hours at most, but this was " + time.text(0));
        }
        return CatchOfWatch.AT_CATCH.equals(typed.at())
                ? caught(tx, context, now, typed.slot(), time)
                : AskedOnce.aboutTime(tx, now.id(), time, typed.insist(), "typed")
                        .orElseGet(() -> decided(facts(tx, context, now, typed.slot(), time, ReadingTaken.HAND_WATCH)));
    }

    private static Decision decided(List<Fact> facts) {
        return new Decision.Decided(facts, Map.of(), AttemptActions.MOVED);
    }

    /** What the watch goes on to show says nothing then: the rule counts on from the catch, in place of all it has told. */
    private static Decision caught(Tx tx, ActContext context, AttemptNow now, int slot, FlightTime time) {
        HoldRule rule = FlightRulesStore.of(tx, now.eventId()).hold().orElse(null);
        if (rule == null) {
            return Decision.refused(
                    "typed", "By the flight rules the clock runs on: type what the watch shows at the landing");
        }
        List<Fact> facts = facts(tx, context, now, slot, CatchOfWatch.over(time, rule), "");
        facts.addAll(CatchOfWatch.marks(tx, context, now.id(), slot, time.millis()));
        return decided(facts);
    }

    /** @param instead of which instrument's reading it stands in place; empty for any */
    private static List<Fact> facts(
            Tx tx, ActContext context, AttemptNow now, int slot, FlightTime time, String instead) {
        List<Fact> facts = new ArrayList<>();
        if (Attempt.of(now) instanceof ReleasedAttempt released) {
            facts.add(Fact.of("attempt.moved", released.land(landedAtMs(context, now, time))));
            facts.add(PhaseGate.acted(context, now.id(), AttemptAct.LANDED));
        }
        facts.add(Fact.of("attempt.reading", reading(tx, context, now.id(), slot, time, instead)));
        facts.add(SaidMeanwhile.told(context, SaidMeanwhile.watch(now.id(), slot), AttemptAct.TYPE_TIME.words()));
        return facts;
    }

    /** As far as the watch tells it; never after now. */
    private static long landedAtMs(ActContext context, AttemptNow now, FlightTime time) {
        long nowMs = context.now().toEpochMilli();
        Long released = now.releasedAtMs();
        return released == null ? nowMs : Math.min(nowMs, released + time.millis());
    }

    private static ReadingTaken reading(
            Tx tx, ActContext context, String attempt, int slot, FlightTime time, String instead) {
        Timed timed = WatchStore.timed(tx, attempt);
        Optional<String> before = Readings.thatCount(timed).stream()
                .filter(r -> r.slot() == slot
                        && !JudgedReadings.isAside(r, timed)
                        && (instead.isEmpty() || r.instrument().equals(instead)))
                .map(ReadingTaken::id)
                .findFirst();
        return new ReadingTaken(
                context.ownId(),
                attempt,
                slot,
                ReadingTaken.HAND_WATCH,
                context.personOrNull(),
                time.millis(),
                context.now().toEpochMilli(),
                before.orElse(null),
                null,
                null);
    }
}
