package org.skeinday.attempt.action;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Seen;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.attempt.WatchVerdict;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/**
 * The captain says of one watch that it failed, that its time is left out, or that it counts after all; or which one counts of
 * several times that it has sent, none as a correction of another.
 */
public final class JudgeWatch {
    /**
     * @param slot of the watch; any where a reading is named
     * @param verdict one of {@link WatchJudged#VERDICTS}; any where a reading is named, which counts then
     * @param reading id of the one that counts of several that one watch has sent; null or empty where none is chosen
     * @param seen what the form showed, as {@link Seen} writes it; null or empty where it showed nothing
     */
    public record Judge(
            String attempt,
            int slot,
            String verdict,
            String reason,
            @Nullable String reading,
            @Nullable String seen) {
        private boolean chooses() {
            return reading != null && !reading.isEmpty();
        }
    }

    private static final Map<String, String> SAYS = Map.of(
            WatchVerdict.FAILED.word(), "it failed",
            WatchVerdict.LEFT_OUT.word(), "left out",
            WatchVerdict.COUNTS.word(), "it counts");

    private JudgeWatch() {}

    static Decision decide(Tx tx, ActContext context, Judge judge) {
        AttemptNow now = AttemptStore.find(tx, judge.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        if (now.state() != State.RELEASED && now.state() != State.LANDED) {
            return Decision.refused(
                    PhaseGate.wrong(tx, context, now, "A watch is judged between release and official time"));
        }
        Optional<Decision> changed = Seen.parse(judge.seen())
                .flatMap(seen -> seen.changed(
                        WatchStore.seen(tx, now),
                        LiveAttempts.find(tx, now.id()).orElseThrow()))
                .map(Decision.Outdated::new);
        if (changed.isPresent()) {
            return changed.get();
        }
        return judge.chooses() ? chosen(tx, context, now, judge) : judged(tx, context, now, judge);
    }

    /** Of several that one watch has sent; the others stay in the record. */
    private static Decision chosen(Tx tx, ActContext context, AttemptNow now, Judge judge) {
        return WatchStore.toChooseFrom(tx, now.id()).stream()
                .filter(reading -> reading.id().equals(judge.reading()))
                .findFirst()
                .map(reading ->
                        said(context, now, reading.slot(), WatchVerdict.COUNTS.word(), judge.reason(), reading.id()))
                .orElseGet(() -> new Decision.Outdated("That time does not stand any more. Look again, then decide."));
    }

    private static Decision judged(Tx tx, ActContext context, AttemptNow now, Judge judge) {
        int timekeepers = EventStore.find(tx, now.eventId()).orElseThrow().timekeepers();
        if (judge.slot() < 1 || judge.slot() > timekeepers) {
            return Decision.refused(
                    "judged", "The rules ask for watch 1 to " + timekeepers + ", but this was watch " + judge.slot());
        }
        return said(context, now, judge.slot(), judge.verdict(), judge.reason(), null);
    }

    private static Decision said(
            ActContext context, AttemptNow now, int slot, String verdict, String why, @Nullable String reading) {
        String reason = why.strip();
        if (!WatchJudged.VERDICTS.contains(verdict) || reason.isEmpty()) {
            return Decision.refused("judged", "Say what holds of watch " + slot + ", and why");
        }
        if (reason.length() > AttemptActions.LONGEST_REASON) {
            return Decision.refused("judged", AttemptActions.tooLong(reason));
        }
        var fact = new WatchJudged(
                context.ownId(),
                now.id(),
                slot,
                verdict,
                reason,
                context.person(),
                context.now().toEpochMilli(),
                reading);
        return Decision.decided(
                AttemptActions.TOPICS,
                Fact.of("watch.judged", fact),
                PhaseGate.acted(context, now.id(), "watch " + slot + ": " + SAYS.get(verdict)));
    }
}
