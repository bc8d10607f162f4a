package org.skeinday.attempt.action;

import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** The captain says of one watch that it failed, that its time is left out, or that it counts after all. */
public final class JudgeWatch {
    /** @param verdict one of {@link WatchJudged#VERDICTS} */
    public record Judge(String attempt, int slot, String verdict, String reason) {}

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
        int timekeepers = EventStore.find(tx, now.eventId()).orElseThrow().timekeepers();
        if (judge.slot() < 1 || judge.slot() > timekeepers) {
            return Decision.refused(
                    "judged", "The rules ask for watch 1 to " + timekeepers + ", but this was watch " + judge.slot());
        }
        String reason = judge.reason().strip();
        if (!WatchJudged.VERDICTS.contains(judge.verdict()) || reason.isEmpty()) {
            return Decision.refused("judged", "Say what holds of watch " + judge.slot() + ", and why");
        }
        if (reason.length() > AttemptActions.LONGEST_REASON) {
            return Decision.refused("judged", AttemptActions.tooLong(reason));
        }
        var fact = new WatchJudged(
                context.ownId(),
                now.id(),
                judge.slot(),
                judge.verdict(),
                reason,
                context.person(),
                context.now().toEpochMilli());
        return Decision.decided(AttemptActions.TOPICS, Fact.of("watch.judged", fact));
    }
}
