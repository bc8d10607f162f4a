package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LateReadings;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.action.CloseAttempt;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.Terms;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.timing.HoldRule;
import org.skeinday.timing.TimeRule;
import org.skeinday.timing.WatchReading;
import org.skeinday.timing.Watches;
import org.skeinday.units.FlightTime;

/** The officials' time beside our own watches, in words. */
public final class Announced {
    private Announced() {}

    /** Empty before a time was announced. @param quiet nobody's readings are told */
    public static Optional<String> of(Tx tx, AttemptNow attempt, EventAdded event, boolean quiet) {
        Optional<HoldRule> hold = FlightRulesStore.of(tx, event.id()).hold();
        return of(
                AttemptStore.note(tx, attempt.id()),
                Readings.watches(inTime(WatchStore.timed(tx, attempt.id()), attempt), hold),
                CloseAttempt.watchesRule(tx, event).time(),
                event,
                quiet);
    }

    /** What came in after the closing was not there when the announced time was counted. */
    private static Timed inTime(Timed timed, AttemptNow attempt) {
        return new Timed(LateReadings.without(timed.readings(), attempt), timed.judged(), timed.marks());
    }

    private static Optional<String> of(
            AttemptNoted noted, Watches watches, TimeRule rule, EventAdded event, boolean quiet) {
        Long announced = noted.announcedMs();
        if (announced == null) {
            return Optional.empty();
        }
        List<WatchReading.Counted> own = watches.counted();
        String words = new FlightTime(announced).text(2);
        if (quiet) {
            return Optional.of(words);
        }
        if (own.isEmpty()) {
            return Optional.of(words + "; no watch of ours");
        }
        String ours = String.join(
                " and ", own.stream().map(watch -> watch.time().text(2)).toList());
        return Optional.of(words + "; ours " + ours + byTheRule(announced, watches, rule, event));
    }

    /** Against what the rule makes of ours: one figure, the same as stands beside it. Of so many it may make nothing. */
    private static String byTheRule(long announcedMs, Watches watches, TimeRule rule, EventAdded event) {
        try {
            long ruleMs = watches.reduce(rule).millis();
            return ", by the rule " + PageWords.time(ruleMs, event) + ": " + apart(announcedMs - ruleMs);
        } catch (IllegalArgumentException e) {
            return "; the rule makes no time of them";
        }
    }

    private static String apart(long ms) {
        if (ms == 0) {
            return "the same";
        }
        return new FlightTime(Math.abs(ms)).seconds(2) + " s " + (ms < 0 ? "less" : "more") + " than ours";
    }

    /** Times of an event that can still be protested, or that have no deadline, the last first. */
    static List<NowView.Protest> open(Tx tx, Today today, long nowMs) {
        Terms terms = TermsStore.of(tx, today.event().id());
        return AttemptStore.notes(tx).stream()
                .filter(noted -> noted.announcedMs() != null && noted.announcedAtMs() != null)
                .filter(noted -> until(terms, noted) > nowMs)
                .sorted(Comparator.comparing(AttemptNoted::announcedAtMs, Comparator.nullsFirst(Long::compare))
                        .reversed())
                .flatMap(noted -> today.attempts().stream()
                        .filter(attempt -> attempt.id().equals(noted.attemptId()))
                        .map(attempt -> protest(tx, today, terms, noted, attempt)))
                .toList();
    }

    private static NowView.Protest protest(Tx tx, Today today, Terms terms, AttemptNoted noted, AttemptNow attempt) {
        long until = until(terms, noted);
        return new NowView.Protest(
                attempt.id(),
                today.entry(attempt.entryId()).name() + ", " + attempt.number().words(),
                of(tx, attempt, today.event(), AttemptStore.quietNow(tx).isPresent())
                        .orElse(""),
                until == Long.MAX_VALUE ? 0 : until);
    }

    /** When the time to protest is over, epoch ms; never, when the terms set none. */
    public static long until(Terms terms, AttemptNoted noted) {
        return terms.protestUntil(noted.announcedAtMs()).orElse(Long.MAX_VALUE);
    }
}
