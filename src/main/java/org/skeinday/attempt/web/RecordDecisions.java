package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.contest.store.ChangesStore;
import org.skeinday.platform.db.Tx;

/** What was decided around an attempt, in the order of time, for its record. */
final class RecordDecisions {
    private final Tx tx;
    private final AttemptNow attempt;
    private final UnaryOperator<String> nameOf;
    private final ZoneId zone;

    RecordDecisions(Tx tx, AttemptNow attempt, UnaryOperator<String> nameOf, ZoneId zone) {
        this.tx = tx;
        this.attempt = attempt;
        this.nameOf = nameOf;
        this.zone = zone;
    }

    List<NowView.Line> lines() {
        List<NowView.Line> lines = new ArrayList<>();
        ChangesStore.ofWindows(tx, attempt.eventId()).stream()
                .filter(move -> move.entryId() == null || move.entryId().equals(attempt.entryId()))
                .forEach(move -> lines.add(new NowView.Line(
                        "window moved", moment(move.atMs(), move.personId()) + ": " + ChangeWords.moved(move, zone))));
        return lines;
    }

    private String moment(long atMs, @Nullable String person) {
        return PageWords.second(atMs, zone) + (person == null || person.isEmpty() ? "" : ", " + nameOf.apply(person));
    }
}
