package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.AttemptReopened;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Signatures;
import org.skeinday.attempt.action.ResultActions;
import org.skeinday.attempt.action.TimeDoubts;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.FlightTime;

/** Collects what waits for a decision or a signature of the day at hand. */
final class DeskPresenter {
    private final Tx tx;
    private final Today today;
    private final ZoneId zone;

    DeskPresenter(Tx tx, Today today, ZoneId zone) {
        this.tx = tx;
        this.today = today;
        this.zone = zone;
    }

    DeskView view(FormErrors form) {
        List<DeskView.Item> doubts = landed().flatMap(this::doubts).toList();
        List<DeskView.ToSign> toSign = provisional().map(this::toSign).toList();
        List<DeskView.Item> protests = protests();
        return new DeskView(
                finding(doubts.size(), toSign.size(), protests.size()),
                doubts,
                toSign,
                protests,
                late(),
                provisional().flatMap(this::corrected).toList(),
                form);
    }

    static DeskView nothing(FormErrors form) {
        return new DeskView("No event yet", List.of(), List.of(), List.of(), List.of(), List.of(), form);
    }

    private static String finding(int doubts, int toSign, int protests) {
        String words = Stream.of(
                        count(doubts, "doubt", "doubts"),
                        count(toSign, "time to sign", "times to sign"),
                        count(protests, "open protest", "open protests"))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(", "));
        return words.isEmpty() ? "Nothing waits" : words;
    }

    private static String count(int n, String one, String many) {
        return n == 0 ? "" : n + " " + (n == 1 ? one : many);
    }

    private AttemptPhase.Name name(AttemptNow attempt) {
        return today.live(attempt.id()).phase().name();
    }

    private Stream<AttemptNow> landed() {
        return today.attempts().stream().filter(a -> name(a) == AttemptPhase.Name.LANDED);
    }

    /** What a watch says of an attempt whose helpers must not be helped stays untold here too. */
    private Stream<DeskView.Item> doubts(AttemptNow attempt) {
        if (WatchesTold.of(tx, today.live(attempt.id()), today.event(), Optional.empty(), true)
                .hidden()) {
            return Stream.empty();
        }
        return TimeDoubts.of(tx, attempt, today.event()).found().stream()
                .map(words -> new DeskView.Item("/now?attempt=" + attempt.id(), today.title(attempt), words));
    }

    private Stream<AttemptNow> provisional() {
        return today.attempts().stream()
                .filter(a ->
                        today.live(a.id()).phase() instanceof AttemptPhase.Official official && official.missing() > 0);
    }

    private DeskView.ToSign toSign(AttemptNow attempt) {
        Signatures signatures = ResultRecord.signatures(tx, attempt.id());
        return new DeskView.ToSign(
                record(attempt),
                today.title(attempt),
                PageWords.cell(today.live(attempt.id()), today.event()),
                attempt.id() + " " + attempt.officialMs(),
                signatures.words(),
                signatures.lacks(AttemptSigned.CAPTAIN));
    }

    private static String record(AttemptNow attempt) {
        return "/attempt/" + attempt.id();
    }

    private List<DeskView.Item> protests() {
        Map<String, List<Protest>> protests = ResultRecord.protests(tx);
        return today.attempts().stream()
                .flatMap(attempt -> protests.getOrDefault(attempt.id(), List.of()).stream()
                        .filter(Protest::stillOpen)
                        .map(p -> new DeskView.Item(
                                record(attempt),
                                today.title(attempt),
                                PageWords.clock(p.atMs(), zone) + ": " + p.words()
                                        + (p.late() ? " (after the time to protest)" : until(attempt)))))
                .toList();
    }

    private String until(AttemptNow attempt) {
        return ResultActions.until(tx, today.event(), attempt)
                .map(ms -> " (others may protest until " + PageWords.clock(ms, zone) + ")")
                .orElse("");
    }

    private List<DeskView.Item> late() {
        Map<String, List<ReadingTaken>> readings =
                WatchStore.allReadings(tx).stream().collect(Collectors.groupingBy(ReadingTaken::attemptId));
        return today.attempts().stream()
                .filter(a -> name(a) == AttemptPhase.Name.OFFICIAL)
                .flatMap(attempt -> readings.getOrDefault(attempt.id(), List.of()).stream()
                        .filter(r -> isAfter(r.atMs(), attempt.closedAtMs()))
                        .map(r -> new DeskView.Item(
                                record(attempt),
                                today.title(attempt),
                                "watch " + r.slot() + ", " + new FlightTime(r.durationMs()).text(2)
                                        + ", came in at " + PageWords.clock(r.atMs() == null ? 0 : r.atMs(), zone)
                                        + ", after the closing")))
                .toList();
    }

    private static boolean isAfter(@Nullable Long atMs, @Nullable Long closedAtMs) {
        return atMs != null && closedAtMs != null && atMs > closedAtMs;
    }

    private Stream<DeskView.Item> corrected(AttemptNow attempt) {
        List<AttemptReopened> opened = ResultRecord.reopenings(tx, attempt.id());
        return opened.isEmpty()
                ? Stream.empty()
                : Stream.of(new DeskView.Item(
                        record(attempt),
                        today.title(attempt),
                        opened.stream()
                                .map(o -> "opened again at " + PageWords.clock(o.atMs(), zone) + ": " + o.reason())
                                .collect(Collectors.joining("; "))));
    }
}
