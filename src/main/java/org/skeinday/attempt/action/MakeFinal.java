package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.ResultFinal;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.ResultVersions;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** The chief makes the result final, as it is shown: a version with its time. Every later change makes another one. */
public final class MakeFinal {
    /**
     * @param after the version that was final when the page was made, 0 for none
     * @param lines of the result, as the server has just made them
     * @param pin whether the coach's PIN was given
     */
    public record Final(String event, int after, List<ResultFinal.Line> lines, boolean pin) {
        public Final {
            lines = List.copyOf(lines);
        }
    }

    private MakeFinal() {}

    static Decision decide(Tx tx, ActContext context, Final said) {
        EventAdded event = EventStore.find(tx, said.event()).orElse(null);
        if (event == null) {
            return Decision.unknown("There is no such event any more; look again");
        }
        if (event.dayKind() != DayKind.HOSTING) {
            return Decision.refused("final", "Elsewhere the officials make the result");
        }
        if (!said.pin()) {
            return Decision.refused("pin", "The chief makes a result final with the coach's PIN");
        }
        Optional<ResultFinal> last = ResultVersions.last(tx, event.id());
        if (last.map(ResultFinal::version).orElse(0) != said.after()) {
            return new Decision.Outdated("Somebody else has made it final meanwhile. Look again, then decide.");
        }
        if (last.filter(before -> before.since(said.lines()).isEmpty()).isPresent()) {
            return Decision.refused("final", "Nothing has changed since it was made final");
        }
        List<String> owed = owed(tx, event, context.now().toEpochMilli());
        if (!owed.isEmpty()) {
            return Decision.refused("final", "It is not final yet: " + String.join("; ", owed));
        }
        var fact = new ResultFinal(
                event.id(),
                said.after() + 1,
                context.person(),
                context.device(),
                context.now().toEpochMilli(),
                said.lines());
        return new Decision.Decided(List.of(Fact.of("result.final", fact)), Map.of(), AttemptActions.TOPICS);
    }

    /** What stands against making the result of an event final, a phrase each. */
    public static List<String> owed(Tx tx, EventAdded event, long nowMs) {
        List<AttemptEvidence> known = LiveAttempts.evidenceOfEvent(tx, event.id());
        List<LiveAttempt> live = known.stream().map(LiveAttempt::of).toList();
        List<String> owed = new ArrayList<>();
        count(open(live), "attempt is under way", "attempts are under way").ifPresent(owed::add);
        count(unsigned(live), "time is not signed by all", "times are not signed by all")
                .ifPresent(owed::add);
        Map<String, List<Protest>> protests = ResultRecord.protests(tx);
        long protested = live.stream()
                .filter(a -> protests.getOrDefault(a.id(), List.of()).stream().anyMatch(Protest::stillOpen))
                .count();
        count(protested, "flight is protested", "flights are protested").ifPresent(owed::add);
        known.stream()
                .map(AttemptEvidence::now)
                .filter(a -> a.closedAtMs() != null && a.officialMs() != null)
                .max(Comparator.comparing(AttemptNow::closedAtMs, Comparator.nullsFirst(Comparator.naturalOrder())))
                .flatMap(latest -> ResultActions.until(tx, event, latest))
                .filter(until -> until > nowMs)
                .ifPresent(until ->
                        owed.add("the time to protest runs for " + ((until - nowMs) / 60_000 + 1) + " min more"));
        return owed;
    }

    /** Whether a time of it may still change. */
    public static boolean isUnsettled(Collection<LiveAttempt> live) {
        return open(live) + unsigned(live) > 0;
    }

    private static long open(Collection<LiveAttempt> live) {
        return live.stream().filter(a -> !a.phase().name().isOver()).count();
    }

    private static long unsigned(Collection<LiveAttempt> live) {
        return live.stream()
                .filter(a -> a.phase() instanceof AttemptPhase.Official official && official.missing() > 0)
                .count();
    }

    private static Optional<String> count(long n, String one, String many) {
        return n == 0 ? Optional.empty() : Optional.of(n + " " + (n == 1 ? one : many));
    }
}
