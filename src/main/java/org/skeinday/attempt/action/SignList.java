package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** The captain signs several official times that are shown together: all of them, or none where one is another by now. */
public final class SignList {
    /**
     * @param times that were ticked
     * @param pin whether the coach's PIN was given
     */
    public record Times(List<Shown> times, boolean pin) {
        public Times {
            times = List.copyOf(times);
        }
    }

    /** One official time as it was shown. */
    public record Shown(String attempt, long ms) {}

    private SignList() {}

    static Decision decide(Tx tx, ActContext context, Times said) {
        if (said.times().isEmpty()) {
            return Decision.refused("times", "Tick the times that you sign");
        }
        if (!said.pin()) {
            return Decision.refused("pin", "The captain signs with the coach's PIN");
        }
        List<Fact> facts = new ArrayList<>();
        for (Shown shown : said.times().stream().distinct().toList()) {
            Optional<Decision> not = whyNot(tx, shown);
            if (not.isPresent()) {
                return not.get();
            }
            facts.add(Fact.of(
                    "attempt.signed",
                    new AttemptSigned(
                            facts.isEmpty() ? context.ownId() : context.nextId(),
                            shown.attempt(),
                            AttemptSigned.CAPTAIN,
                            context.person(),
                            context.device(),
                            context.now().toEpochMilli())));
        }
        return new Decision.Decided(facts, Map.of(), AttemptActions.TOPICS);
    }

    private static Optional<Decision> whyNot(Tx tx, Shown shown) {
        AttemptNow now = AttemptStore.find(tx, shown.attempt()).orElse(null);
        if (now == null) {
            return Optional.of(Decision.unknown("One of these attempts is not there any more; look again"));
        }
        Long official = now.officialMs();
        boolean same = now.state() == State.CLOSED && official != null && official == shown.ms();
        if (!same || !ResultRecord.signatures(tx, now.id()).lacks(AttemptSigned.CAPTAIN)) {
            return Optional.of(
                    new Decision.Outdated(
                            "One of these times was changed or signed meanwhile, and none is signed now. Look again, then sign."));
        }
        return EventStore.find(tx, now.eventId()).orElseThrow().dayKind() == DayKind.HOSTING
                ? Optional.empty()
                : Optional.of(
                        Decision.refused("times", "Elsewhere the officials sign; here the announced time is kept"));
    }
}
