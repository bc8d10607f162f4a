package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LateReadings;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.ResultMoves;
import org.skeinday.attempt.StandingTime;
import org.skeinday.attempt.State;
import org.skeinday.attempt.TimeDecided;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.store.EventSheet;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.TimesDecided;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.RulesChanged;
import org.skeinday.contest.Terms;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.timing.OfficialTime;
import org.skeinday.timing.TimeRule;
import org.skeinday.units.EnumWords;

/**
 * A change of rules under which flights are official already. Where it is the step, the rounding or what is taken of several
 * watches, each time is computed anew from its watches, so that times of two steps never stand on one sheet; what was judged
 * of a flight stays. What that moves is computed by what makes the sheet.
 */
public final class RulesChange {
    /** The rules of an event, from all three places where they stand. */
    public record Rules(EventAdded event, FlightRules flights, Terms terms) {
        public static Optional<Rules> now(Tx tx, String event) {
            return EventStore.find(tx, event)
                    .map(found -> new Rules(found, FlightRulesStore.of(tx, event), TermsStore.of(tx, event)));
        }

        boolean isSame(Rules other) {
            return event.hasRulesOf(other.event) && flights.equals(other.flights) && terms.equals(other.terms);
        }
    }

    private final List<TimeDecided> recomputed = new ArrayList<>();
    private final List<String> withoutWatches = new ArrayList<>();
    private final ResultMoves moves;
    private final int signed;
    private final Rules after;

    private RulesChange(Tx tx, ActContext context, Rules before, Rules after) {
        this.after = after;
        EventSheet sheet = EventSheet.read(tx, before.event().id());
        TimeRule then = CloseAttempt.rule(before.event());
        TimeRule now = CloseAttempt.rule(after.event());
        List<ResultMoves.Time> times = new ArrayList<>();
        Map<String, Long> others = new HashMap<>();
        for (AttemptNow attempt : then.equals(now) ? List.<AttemptNow>of() : sheet.attempts()) {
            Long official = attempt.officialMs();
            if (attempt.state() == State.CLOSED && official != null) {
                recompute(tx, context, attempt, now).ifPresent(decided -> {
                    recomputed.add(decided);
                    if (decided.officialMs() != official) {
                        others.put(attempt.id(), decided.officialMs());
                        times.add(new ResultMoves.Time(
                                attempt.id(),
                                title(tx, attempt),
                                official,
                                then.decimals(),
                                decided.officialMs(),
                                now.decimals()));
                    }
                });
            }
        }
        this.signed = (int) recomputed.stream()
                .filter(d -> !ResultRecord.signatures(tx, d.attemptId()).given().isEmpty())
                .count();
        this.moves = ResultMoves.of(
                sheet.by(tx, before.event(), before.flights(), Map.of()),
                sheet.by(tx, after.event(), after.flights(), others),
                times);
    }

    /** Whether a change of this event's rules asks for the coach's PIN and a reason. */
    public static boolean areFrozen(Tx tx, EventAdded event) {
        return event.dayKind() == DayKind.HOSTING && TimesDecided.anyOfficial(tx, event.id());
    }

    /** Empty where nothing is official yet, or no rule is another. */
    public static Optional<RulesChange> of(Tx tx, ActContext context, Rules after) {
        return Rules.now(tx, after.event().id())
                .filter(before -> areFrozen(tx, before.event()) && !before.isSame(after))
                .map(before -> new RulesChange(tx, context, before, after));
    }

    /** Empty for a time of the jury, which no watch made, and for one that cannot be computed anew. */
    private Optional<TimeDecided> recompute(Tx tx, ActContext context, AttemptNow attempt, TimeRule rule) {
        List<TimeDecided> decisions = TimesDecided.since(tx, attempt.id());
        if (StandingTime.holding(decisions).stream().anyMatch(d -> d.is(TimeDecided.Kind.JURY))) {
            return Optional.empty();
        }
        Timed timed = WatchStore.timed(tx, attempt.id());
        Timed before = new Timed(
                timed.readings().stream()
                        .filter(r -> !LateReadings.isLate(r, attempt))
                        .toList(),
                timed.judged(),
                timed.marks());
        try {
            OfficialTime time = Readings.watches(before, after.flights().hold()).reduce(rule);
            return Optional.of(decided(context, attempt, decisions, time, rule));
        } catch (IllegalArgumentException e) { // no reading, or the rule has nothing to say of so many
            withoutWatches.add(title(tx, attempt));
            return Optional.empty();
        }
    }

    private static TimeDecided decided(
            ActContext context, AttemptNow attempt, List<TimeDecided> decisions, OfficialTime time, TimeRule rule) {
        List<TimeDecided> deductions = StandingTime.holding(decisions).stream()
                .filter(d -> d.is(TimeDecided.Kind.DEDUCTION))
                .toList();
        StandingTime stands = StandingTime.of(time, deductions, rule);
        return new TimeDecided(
                context.nextId(),
                attempt.id(),
                EnumWords.of(TimeDecided.Kind.RULES),
                context.now().toEpochMilli(),
                context.personOrNull(),
                context.device(),
                "the rules were changed",
                time.millis(),
                null,
                null,
                AttemptClosed.cut(time.how()),
                stands.ms(),
                stands.how());
    }

    /** Times that no watch can make anew, of entries and attempts; where there is one, the step stays. */
    public List<String> withoutWatches() {
        return List.copyOf(withoutWatches);
    }

    /** What it moves, in words, for whoever decides. */
    public String words() {
        String judged = "What was judged of a flight stays as it was judged.";
        String again = recomputed.isEmpty()
                ? " Signatures stay."
                : " Every time is computed anew from its watches"
                        + (signed == 0 ? "." : "; " + signed + " signed, to be signed again.");
        return moves.words() + again + " " + judged;
    }

    /**
     * What stands of it: on the sheet and the wall, and each time that was computed anew.
     *
     * @param changed which fields, from what to what
     */
    public List<Fact> facts(ActContext context, String reason, String changed) {
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of(
                "rules.changed",
                new RulesChanged(
                        context.nextId(),
                        after.event().id(),
                        context.now().toEpochMilli(),
                        context.personOrNull(),
                        reason,
                        changed,
                        moves.words())));
        recomputed.forEach(decided -> facts.add(Fact.of("attempt.time-decided", decided)));
        return facts;
    }

    private static String title(Tx tx, AttemptNow attempt) {
        return EntryStore.find(tx, attempt.entryId()).orElseThrow().name() + ", "
                + attempt.number().words();
    }
}
