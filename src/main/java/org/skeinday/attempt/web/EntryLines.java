package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.List;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.contest.EntryAdded;

/** The entries' day so far, as the page Now lists them. */
final class EntryLines {
    private EntryLines() {}

    static List<NowView.EntryLine> of(Today today, ZoneId zone) {
        return today.byWindow().stream().map(entry -> line(today, entry, zone)).toList();
    }

    /** The page goes on to the next attempt by itself: what the last one came to must not get lost over it. */
    static NowView.Choice closed(Today today, AttemptNow attempt) {
        return new NowView.Choice(
                attempt.id(),
                today.entry(attempt.entryId()).name() + ", " + attempt.number().words() + ": "
                        + PageWords.cell(today.live(attempt.id()), today.event()) + ", "
                        + PhaseWords.of(today.live(attempt.id())) + ".");
    }

    private static NowView.EntryLine line(Today today, EntryAdded entry, ZoneId zone) {
        boolean left = today.hasAttemptLeft(entry);
        String state = today.of(entry).stream()
                .filter(today::isOpen)
                .map(a -> PhaseWords.of(today.live(a.id())))
                .findFirst()
                .orElse(left ? "waiting" : "done");
        return new NowView.EntryLine(
                entry.name(),
                entry.team(),
                PageWords.window(today, entry, zone),
                PageWords.times(today, entry),
                state,
                entry.id(),
                today.nextNumber(entry).running(),
                left,
                today.of(entry).stream()
                        .filter(today::isOpen)
                        .map(AttemptNow::id)
                        .findFirst()
                        .orElse(""));
    }
}
