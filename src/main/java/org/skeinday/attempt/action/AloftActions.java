package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aloft;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** A model in the air that is caught, comes free or stays held, and one that a helper steered. */
final class AloftActions {
    /**
     * @param say caught, free, still-held, start-again, steered, or no-watch where none has the time of the catch
     * @param by of a catch: building or person; the building where nobody says
     * @param with of steering: none, balloon or pole
     */
    record Say(
            String attempt,
            String say,
            @Nullable String by,
            @Nullable String with) {}

    private static final Map<String, AttemptAct> ACTS = Map.of(
            "caught", AttemptAct.CAUGHT,
            "free", AttemptAct.FREE_AGAIN,
            "still-held", AttemptAct.STILL_HELD,
            "start-again", AttemptAct.START_AGAIN,
            "steered", AttemptAct.STEERED,
            "no-watch", AttemptAct.DECLARE_VOID);
    private static final String STARTED_AGAIN = "caught: started again";

    private AloftActions() {}

    static Decision decide(Tx tx, ActContext context, Say say) {
        LiveAttempt live = LiveAttempts.find(tx, say.attempt()).orElse(null);
        if (live == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        AttemptAct act = ACTS.get(say.say());
        if (act == null) {
            return Decision.refused("A model is caught, free, still-held, steered or flown by start-again, but never '"
                    + say.say() + "'");
        }
        AttemptNow now = AttemptStore.find(tx, live.id()).orElseThrow();
        return PhaseGate.refused(tx, context, live, act).orElseGet(() -> switch (act) {
            case START_AGAIN -> startAgain(tx, context, now, live);
            case DECLARE_VOID -> CatchOfWatch.nobodys(tx, context, now, live);
            default -> said(tx, context, now, live, act, say);
        });
    }

    /** Void and flown again, as after a collision: its next try has the same number of the rules. */
    private static Decision startAgain(Tx tx, ActContext context, AttemptNow now, LiveAttempt live) {
        FlightRules rules = FlightRulesStore.of(tx, now.eventId());
        if (!rules.letsStartAgain()) {
            return Decision.refused("By the flight rules of this event a model that was caught does not start again: "
                    + rules.caughtWords() + ". Whether it may is set in Prepare, page Flight rules");
        }
        long atMs = context.now().toEpochMilli();
        if (!rules.letsStartAgain(live.heldMs(atMs))) {
            return Decision.refused(
                    "It was not held for so long that its flight is over. By the flight rules: " + rules.caughtWords());
        }
        Attempt.AfterRelease flown = (Attempt.AfterRelease) Attempt.of(now);
        List<Fact> facts = AttemptActions.withQuietEnded(
                tx,
                now.id(),
                atMs,
                Fact.of(
                        "attempt.given-up",
                        flown.declareVoid(atMs, STARTED_AGAIN).again()));
        facts.add(JudgeFlight.fact(tx, context, now));
        facts.add(PhaseGate.acted(context, now.id(), AttemptAct.START_AGAIN));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    private static Decision said(Tx tx, ActContext context, AttemptNow now, LiveAttempt live, AttemptAct act, Say say) {
        long atMs = context.now().toEpochMilli();
        long ms = now.releasedAtMs() == null ? 0 : Math.max(0, atMs - now.releasedAtMs());
        long caughtMs =
                live.phase() instanceof AttemptPhase.InTheAir flies && flies.caughtMs() != null ? flies.caughtMs() : ms;
        Aloft before = now.aloft();
        try {
            Aloft after = switch (act) {
                case CAUGHT -> before.caught(ms, word(say.by(), "building"));
                case FREE_AGAIN -> before.freed(ms, caughtMs);
                case STILL_HELD -> before.stillHeld(caughtMs);
                default -> before.steered(word(say.with(), "none"));
            };
            List<Fact> facts = new ArrayList<>(List.of(Fact.of("attempt.aloft", after)));
            over(tx, now, act, atMs).ifPresent(facts::add);
            facts.add(PhaseGate.acted(context, now.id(), act));
            return new Decision.Decided(facts, Map.of(), AttemptActions.MOVED);
        } catch (IllegalArgumentException e) {
            return Decision.refused("aloft", String.valueOf(e.getMessage()));
        }
    }

    private static String word(@Nullable String said, String otherwise) {
        return said == null || said.isBlank() ? otherwise : said;
    }

    /** Where the rules end the flight of a model that stays held, nobody waits for a landing. */
    private static Optional<Fact> over(Tx tx, AttemptNow now, AttemptAct act, long atMs) {
        boolean ends = act == AttemptAct.STILL_HELD
                && FlightRulesStore.of(tx, now.eventId()).hold().isPresent();
        return ends && Attempt.of(now) instanceof ReleasedAttempt released
                ? Optional.of(Fact.of("attempt.moved", released.land(atMs)))
                : Optional.empty();
    }
}
