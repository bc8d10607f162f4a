package org.skeinday.attempt.action;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Gives an attempt up: before its release it is scrubbed, after it void. */
public final class GiveUpAttempt {
    private GiveUpAttempt() {}

    /** Gives an attempt up, with a reason. @param again whether after its release it is flown again and uses up nothing */
    public record GiveUp(
            String attempt,
            String reason,
            @Nullable String seen,
            @Nullable Boolean again) {}

    static Decision decide(Tx tx, ActContext context, GiveUp giveUp) {
        AttemptNow now = AttemptStore.find(tx, giveUp.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        Optional<Decision> outdated = AttemptDeeds.outdated(giveUp.seen(), now);
        if (outdated.isPresent()) {
            return outdated.get();
        }
        String reason = giveUp.reason().strip();
        Optional<Decision> wrong = AttemptDeeds.wrongWords("reason", reason, AttemptDeeds.SAY_WHY);
        if (wrong.isPresent()) {
            return wrong.get();
        }
        long atMs = context.now().toEpochMilli();
        Attempt attempt = Attempt.of(now);
        if (attempt instanceof Attempt.BeforeRelease before) {
            return ended(tx, now, atMs, Fact.of("attempt.given-up", before.scrub(atMs, reason)));
        }
        if (attempt instanceof Attempt.AfterRelease after) {
            return ended(
                    tx,
                    now,
                    atMs,
                    Fact.of(
                            "attempt.given-up",
                            Boolean.TRUE.equals(giveUp.again())
                                    ? after.declareVoid(atMs, reason).again()
                                    : after.declareVoid(atMs, reason)));
        }
        return Decision.refused("An attempt that is " + now.state().word() + " cannot be given up");
    }

    private static Decision ended(Tx tx, AttemptNow attempt, long atMs, Fact fact) {
        return new Decision.Decided(
                AttemptDeeds.withQuietEnded(tx, attempt.id(), atMs, fact), Map.of(), AttemptDeeds.TOPICS);
    }
}
