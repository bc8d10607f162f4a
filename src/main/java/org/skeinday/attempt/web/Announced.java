package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.Terms;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.FlightTime;

/** The officials' time beside our own watches, in words. */
public final class Announced {
    private Announced() {}

    /** Empty before a time was announced. @param quiet nobody's readings are told */
    public static Optional<String> of(AttemptNoted noted, List<ReadingTaken> readings, boolean quiet) {
        Long announced = noted.announcedMs();
        if (announced == null) {
            return Optional.empty();
        }
        List<ReadingTaken> own = Readings.thatCount(readings);
        String words = new FlightTime(announced).text(2);
        if (quiet) {
            return Optional.of(words);
        }
        if (own.isEmpty()) {
            return Optional.of(words + "; no watch of ours");
        }
        long mean = Math.round(
                own.stream().mapToLong(ReadingTaken::durationMs).average().orElse(announced));
        String ours = String.join(
                " and ",
                own.stream().map(r -> new FlightTime(r.durationMs()).text(2)).toList());
        return Optional.of(words + "; ours " + ours + ": " + apart(announced - mean));
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
                of(
                                noted,
                                WatchStore.readings(tx, attempt.id()),
                                AttemptStore.quietNow(tx).isPresent())
                        .orElse(""),
                until == Long.MAX_VALUE ? 0 : until);
    }

    /** When the time to protest is over, epoch ms; never, when the terms set none. */
    public static long until(Terms terms, AttemptNoted noted) {
        return terms.protestUntil(noted.announcedAtMs()).orElse(Long.MAX_VALUE);
    }
}
