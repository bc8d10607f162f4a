package org.skeinday.attempt.web;

import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptReopened;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.LateReadings;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.attempt.Signatures;
import org.skeinday.attempt.store.HallStops;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.FlightTime;

/** Makes the printed document of a result: the order, and of each attempt what its time rests on. */
final class DocumentPresenter {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM yyyy", Locale.ENGLISH);

    private final Tx tx;
    private final Today today;
    private final Clock clock;
    private final UnaryOperator<String> nameOf;
    private final Map<String, List<ReadingTaken>> readings;
    private final Map<String, List<Protest>> protests;

    DocumentPresenter(Tx tx, Today today, Clock clock, UnaryOperator<String> nameOf) {
        this.tx = tx;
        this.today = today;
        this.clock = clock;
        this.nameOf = nameOf;
        this.readings = WatchStore.allReadings(tx).stream().collect(Collectors.groupingBy(ReadingTaken::attemptId));
        this.protests = ResultRecord.protests(tx);
    }

    DocumentView view() {
        ResultStanding standing = ResultStanding.of(tx, today, clock.getZone());
        ResultSheet all = today.sheet(tx, "");
        List<DocumentView.Summary> summaries = summaries(all);
        String hall = today.event().hall();
        return new DocumentView(
                today.event().name(),
                LocalDate.parse(today.event().day()).format(DAY) + (hall == null || hall.isBlank() ? "" : " · " + hall),
                ResultStanding.rules(today),
                standing.words(),
                LocalDate.ofInstant(clock.instant(), clock.getZone()).format(DAY) + " "
                        + PageWords.clock(clock.millis(), clock.getZone()),
                standing.changes(),
                PageWords.score(today),
                IntStream.rangeClosed(1, all.columns()).boxed().toList(),
                summaries,
                ResultWords.legend(summaries.get(0).rows()),
                HallStops.ofEvent(tx, today.event().id()).stream()
                        .map(stop -> moment(stop.atMs()) + " to " + moment(stop.resumedAtMs()) + ": " + stop.why())
                        .toList(),
                all.lines().stream()
                        .flatMap(line -> line.attempts().stream())
                        .flatMap(List::stream)
                        .filter(one -> one.attempt().phase().name().isOver())
                        .flatMap(one -> annex(all, one).stream())
                        .toList());
    }

    /** Where there is one division, or none, over all is enough. */
    private List<DocumentView.Summary> summaries(ResultSheet all) {
        List<String> divisions = today.divisions();
        List<DocumentView.Summary> summaries = new ArrayList<>();
        summaries.add(new DocumentView.Summary("Over all", ResultWords.rows(all)));
        if (divisions.size() > 1) {
            divisions.forEach(name -> summaries.add(
                    new DocumentView.Summary("Division " + name, ResultWords.rows(today.sheet(tx, name)))));
        }
        return summaries;
    }

    private Optional<DocumentView.Attempt> annex(ResultSheet sheet, ResultSheet.Try one) {
        return today.attempts().stream()
                .filter(a -> a.id().equals(one.attempt().id()))
                .findFirst()
                .map(a -> new DocumentView.Attempt(
                        today.title(a), ResultWords.inFull(sheet, one), how(a), lines(a), signers(a)));
    }

    private static String how(AttemptNow attempt) {
        String how = attempt.how();
        String reason = attempt.voidReason();
        return how != null ? how : reason == null ? "" : reason;
    }

    private List<NowView.Line> lines(AttemptNow attempt) {
        List<NowView.Line> lines = new ArrayList<>();
        readings.getOrDefault(attempt.id(), List.of()).forEach(r -> lines.add(reading(r, attempt)));
        ResultRecord.reopenings(tx, attempt.id()).forEach(o -> lines.add(opened(o)));
        protests.getOrDefault(attempt.id(), List.of())
                .forEach(p -> lines.add(new NowView.Line(
                        "protest, " + moment(p.atMs()),
                        p.words() + (p.settled() == null ? ": open" : ": " + p.settled()))));
        return lines;
    }

    private NowView.Line reading(ReadingTaken reading, AttemptNow attempt) {
        String notes = Stream.of(
                        reading.wasTapped() ? "" : "hand watch",
                        reading.isPartial() ? "partial" : "",
                        Boolean.TRUE.equals(reading.takenBack()) ? "set aside or taken back" : "",
                        LateReadings.isLate(reading, attempt) ? "came in after the closing" : "")
                .filter(note -> !note.isEmpty())
                .collect(Collectors.joining(", "));
        String person = reading.personId();
        return new NowView.Line(
                "watch " + reading.slot() + (person == null || person.isEmpty() ? "" : ", " + nameOf.apply(person)),
                new FlightTime(reading.durationMs()).text(2) + (notes.isEmpty() ? "" : " (" + notes + ")"));
    }

    private NowView.Line opened(AttemptReopened opened) {
        return new NowView.Line("opened again, " + moment(opened.atMs()), opened.reason());
    }

    /** Each watch, the chief and the competitor; who has signed on a device stands there with the time. */
    private List<NowView.Line> signers(AttemptNow attempt) {
        if (attempt.officialMs() == null) {
            return List.of(new NowView.Line("chief", ""), new NowView.Line("competitor", ""));
        }
        Signatures signatures = ResultRecord.signatures(tx, attempt.id());
        return Stream.concat(
                        signatures.needed().stream()
                                .map(signer -> new NowView.Line(
                                        signer.as().equals(AttemptSigned.CAPTAIN) ? "chief" : signer.words(),
                                        signatures.given().stream()
                                                .filter(s -> s.signedAs().equals(signer.as()))
                                                .map(s -> "signed " + moment(s.atMs()))
                                                .findFirst()
                                                .orElse(""))),
                        Stream.of(new NowView.Line("competitor", "")))
                .toList();
    }

    private String moment(@Nullable Long ms) {
        return ms == null ? "–" : PageWords.clock(ms, clock.getZone());
    }
}
