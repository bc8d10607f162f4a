package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LandedAttempt;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.attempt.WatchMark;
import org.skeinday.attempt.WatchVerdict;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.timing.HoldRule;
import org.skeinday.units.FlightTime;

/** A catch that the captain saw and no watch has marked: its time is typed, or is nobody's. */
public final class CatchOfWatch {
    /** Typed is what a watch showed when the model was caught. */
    public static final String AT_CATCH = "catch";
    /** This watch has no time of the catch. */
    public static final String NONE = "none";

    private static final String NO_TIME = "it has no time of the catch";
    public static final String NOBODY_HAS_IT = "caught: no watch has the time of the catch";

    private CatchOfWatch() {}

    /** The catch as a mark of the watch, in place of what it has marked of one before. @param ms after the release */
    public static List<Fact> marks(Tx tx, ActContext context, String attempt, int slot, long ms) {
        var when = new TapTime.Moment(context.now().toEpochMilli(), null);
        List<Fact> facts = new ArrayList<>();
        for (String before : WatchStore.marks(tx, attempt).catches(slot)) {
            facts.add(WatchActions.mark(
                    context, context.nextId(), attempt, slot, WatchMark.TAKEN_BACK, ms, before, when));
        }
        facts.add(WatchActions.mark(context, context.nextId(), attempt, slot, WatchMark.HELD, ms, null, when));
        facts.addAll(AsksAgain.contacts(tx, context, attempt));
        return facts;
    }

    /** When a watch that was stopped at the catch is taken to have ended: once the model was watched for long enough. */
    public static FlightTime over(FlightTime caught, HoldRule rule) {
        return new FlightTime(caught.millis() + rule.watchedMs());
    }

    static Decision none(Tx tx, ActContext context, LiveAttempt live, int slot) {
        if (!AttemptActs.of(live).contains(AttemptAct.JUDGE_WATCH)) {
            return Decision.refused("typed", "An official time is opened again before a watch is said to have none");
        }
        var fact = new WatchJudged(
                context.ownId(),
                live.id(),
                slot,
                WatchVerdict.FAILED.word(),
                NO_TIME,
                context.person(),
                context.now().toEpochMilli(),
                null);
        return Decision.decided(AttemptActions.TOPICS, Fact.of("watch.judged", fact));
    }

    static Decision nobodys(Tx tx, ActContext context, AttemptNow now, LiveAttempt live) {
        FlightRules rules = FlightRulesStore.of(tx, now.eventId());
        long atMs = context.now().toEpochMilli();
        if (rules.hold().isEmpty() || live.heldMs(atMs) == null) {
            return Decision.refused("By the flight rules the clock runs on, or nothing has caught it: its watches have"
                    + " the time of the landing");
        }
        List<Fact> facts = AttemptActions.withQuietEnded(
                tx, now.id(), atMs, ended((Attempt.AfterRelease) Attempt.of(now), rules, live.heldMs(atMs), atMs));
        facts.add(JudgeFlight.fact(tx, context, now));
        facts.add(PhaseGate.acted(context, now.id(), AttemptAct.DECLARE_VOID));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    /** The same of a card on paper, where nobody has told for how long it was held. */
    public static Fact ended(String attempt, FlightRules rules, long atMs) {
        return ended(new LandedAttempt(attempt), rules, Long.MAX_VALUE, atMs);
    }

    /** Void; flown again where the rules let a flight that a catch ended be flown again. */
    private static Fact ended(Attempt.AfterRelease flown, FlightRules rules, @Nullable Long heldMs, long atMs) {
        var ended = flown.declareVoid(atMs, NOBODY_HAS_IT);
        return Fact.of("attempt.given-up", rules.letsStartAgain(heldMs) ? ended.again() : ended);
    }
}
