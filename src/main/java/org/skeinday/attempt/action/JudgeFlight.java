package org.skeinday.attempt.action;

import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptVerdict;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.standing.Scoring;
import org.skeinday.timing.ReleaseVerdict;

/** Judges a flight once, when it is decided: what is said of it stays, whatever becomes of the rules. */
public final class JudgeFlight {
    private JudgeFlight() {}

    /** Of one that is decided now. */
    public static Fact fact(Tx tx, ActContext context, AttemptNow attempt) {
        EventAdded event = EventStore.find(tx, attempt.eventId()).orElseThrow();
        FlightRules rules = FlightRulesStore.of(tx, event.id());
        Optional<ReleaseVerdict> window = TimeDoubts.of(tx, attempt, event).verdict();
        AttemptVerdict verdict = byRules(attempt.id(), event, rules)
                .saying(
                        window.map(ReleaseVerdict::words).orElse(null),
                        attempt.aloft().words().isEmpty() ? null : rules.caughtWords(),
                        ResultRecord.collision(tx, attempt.id())
                                .map(c -> c.at(context.now().toEpochMilli(), rules)
                                        .words())
                                .orElse(null));
        return fact(verdict);
    }

    /** Of one that was flown without any of this, and comes in from paper: the rules of the day count it. */
    public static Fact fromPaper(Tx tx, EventAdded event, String attempt) {
        return fact(byRules(attempt, event, FlightRulesStore.of(tx, event.id())));
    }

    private static AttemptVerdict byRules(String attempt, EventAdded event, FlightRules rules) {
        return AttemptVerdict.of(attempt, Scoring.of(event, rules).flights());
    }

    private static Fact fact(AttemptVerdict verdict) {
        return Fact.of("attempt.verdict", verdict);
    }
}
