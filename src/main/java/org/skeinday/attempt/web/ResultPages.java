package org.skeinday.attempt.web;

import java.time.Clock;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.HallStopped;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.HallStops;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.standing.DecidedFlight;
import org.skeinday.standing.FlightTally;
import org.skeinday.standing.Scoring;
import org.skeinday.standing.Standings;
import org.skeinday.units.FlightTime;

/** The result sheet: attempts, official times and how they came about, the order. */
public final class ResultPages {
    private final Clock clock;
    private final ActStore record;
    private final Page page;

    public ResultPages(ActStore record, Page page, Clock clock) {
        this.clock = clock;
        this.record = record;
        this.page = page;
    }

    public void register(Routes routes) {
        routes.get("/results", Role.VIEWER, ctx -> page.show(ctx, "Result sheet", "attempt/results.jte", view()));
        routes.get(
                "/results/part", Role.VIEWER, ctx -> page.shared(ctx, "", clock, "attempt/_results.jte", this::view));
        wall(routes);
    }

    private ResultView view() {
        return record.read(tx -> Today.read(tx).map(today -> view(tx, today, quiet(tx))))
                .orElse(new ResultView("No event yet", "Score", List.of(), List.of(), List.of(), List.of(), List.of()));
    }

    /** When Skeinday gave no help, in words, by attempt. */
    private Map<String, String> quiet(Tx tx) {
        Map<String, String> quiet = new HashMap<>();
        AttemptStore.quiet(tx)
                .forEach(q -> quiet.put(
                        q.attemptId(),
                        ". Skeinday gave no help from " + PageWords.clock(q.fromMs(), clock.getZone())
                                + (q.toMs() == null ? " on" : " to " + PageWords.clock(q.toMs(), clock.getZone()))));
        return quiet;
    }

    private ResultView view(Tx tx, Today today, Map<String, String> quiet) {
        return new ResultView(
                today.event().name() + " · " + PageWords.scoreInFull(today).toLowerCase(Locale.ROOT),
                PageWords.score(today),
                IntStream.rangeClosed(1, columns(today)).boxed().toList(),
                rows(today),
                hows(tx, today, quiet),
                HallStops.ofEvent(tx, today.event().id()).stream()
                        .map(this::stop)
                        .toList(),
                OpenAttempt.of(today));
    }

    private String stop(HallStopped stop) {
        Long until = stop.resumedAtMs();
        return PageWords.clock(stop.atMs(), clock.getZone())
                + (until == null ? " on" : " to " + PageWords.clock(until, clock.getZone())) + ": " + stop.why();
    }

    static List<ResultView.Row> rows(Today today) {
        Scoring scoring = today.scoring();
        Map<String, List<DecidedFlight>> flown = new LinkedHashMap<>();
        today.entries().forEach(entry -> flown.put(entry.name(), OfficialFlights.of(today.of(entry))));
        return scoring.order(flown).stream()
                .map(placed -> row(today, placed, scoring))
                .toList();
    }

    private static ResultView.Row row(Today today, Standings.Placed placed, Scoring scoring) {
        EntryAdded entry = today.entries().stream()
                .filter(e -> e.name().equals(placed.entry()))
                .findFirst()
                .orElseThrow();
        List<List<ResultView.Cell>> cells = IntStream.rangeClosed(1, columns(today))
                .mapToObj(attempt -> tries(today, entry, attempt))
                .toList();
        String score = placed.countedMs()
                .map(ms -> score(ms, scoring, PageWords.decimals(today.event())))
                .orElse("–");
        return new ResultView.Row(
                placed.place() == 0 ? "" : String.valueOf(placed.place()), entry.name(), cells, score);
    }

    /** As many as the rules allow; more where they allowed more when it was flown. */
    private static int columns(Today today) {
        int most = today.event().attempts();
        return today.attempts().stream()
                .filter(a -> a.verdict() != null && a.state() != State.SCRUBBED)
                .mapToInt(a -> Math.max(most, a.number().rule()))
                .max()
                .orElse(most);
    }

    /** Of one attempt of the rules: repeats stand beside what they repeat; what was abandoned is no flight. */
    private static List<ResultView.Cell> tries(Today today, EntryAdded entry, int attempt) {
        FlightTally tally = today.tally(entry);
        List<ResultView.Cell> tries = today.of(entry).stream()
                .filter(a -> a.state() != State.SCRUBBED && a.number().rule() == attempt)
                .map(a -> new ResultView.Cell(
                        a.id(),
                        PageWords.cell(today.live(a.id()), today.event(), tally),
                        a.number().isRepeat() ? a.number().nthTry() : ""))
                .toList();
        return tries.isEmpty() ? List.of(new ResultView.Cell("", "–", "")) : tries;
    }

    /** A mean has its own hundredths, whatever the rules round a single time to. */
    private static String score(long countedMs, Scoring scoring, int decimals) {
        return new FlightTime(scoring.shownMs(countedMs)).text(scoring.isMean() ? 2 : decimals);
    }

    private static List<ResultView.How> hows(Tx tx, Today today, Map<String, String> quiet) {
        boolean hosting = today.event().dayKind() == DayKind.HOSTING;
        Map<String, List<Protest>> protests = ResultRecord.protests(tx);
        Map<String, String> standings = new HashMap<>();
        today.entries()
                .forEach(entry -> today.tally(entry).verdicts().stream()
                        .filter(v -> v.standing() != FlightTally.Standing.OFFICIAL)
                        .forEach(v -> standings.put(v.id(), ". As a flight: " + v.reason())));
        return today.attempts().stream()
                .filter(a -> a.how() != null || a.voidReason() != null || protests.containsKey(a.id()))
                .map(a -> new ResultView.How(
                        a.id(),
                        today.entry(a.entryId()).name() + ", " + a.number().words(),
                        came(a, today)
                                + (a.state() == State.CLOSED ? standings.getOrDefault(a.id(), "") : "")
                                + (a.state() == State.CLOSED && hosting ? "" : outside(today, a))
                                + (a.aloft().words().isEmpty()
                                        ? ""
                                        : ". Aloft: " + a.aloft().words())
                                + quiet.getOrDefault(a.id(), ""),
                        a.state() == State.CLOSED && hosting
                                ? ResultRecord.signatures(tx, a.id()).words()
                                : "",
                        protests.getOrDefault(a.id(), List.of()).stream()
                                .map(p -> p.stillOpen() ? "protested" : "protest settled")
                                .distinct()
                                .collect(Collectors.joining(", "))))
                .toList();
    }

    private static String came(AttemptNow attempt, Today today) {
        String how = attempt.how();
        String reason = attempt.voidReason();
        return how != null
                ? how
                : PhaseWords.of(today.live(attempt.id())) + (reason == null ? ", not official yet" : ": " + reason);
    }

    private void wall(Routes routes) {
        routes.get(
                "/results/wall", Role.VIEWER, ctx -> page.show(ctx, "Results on the wall", "attempt/wall.jte", wall()));
        routes.get(
                "/results/wall/part", Role.VIEWER, ctx -> page.shared(ctx, "", clock, "attempt/_wall.jte", this::wall));
    }

    private WallView wall() {
        long nowMs = clock.millis();
        return record.read(Today::read)
                .map(today -> {
                    Optional<EntryAdded> whose =
                            today.underWay().map(a -> today.entry(a.entryId())).or(() -> today.nextEntry(nowMs));
                    return new WallView(
                            today.event().name(),
                            whose.map(EntryAdded::name).orElse(""),
                            WindowClock.of(whose.flatMap(today::flightWindow), nowMs),
                            rows(today),
                            PageWords.score(today));
                })
                .orElse(new WallView("No event yet", "", WindowClock.of(Optional.empty(), nowMs), List.of(), ""));
    }

    private static String outside(Today today, AttemptNow attempt) {
        return today.windowOf(attempt)
                .flatMap(w -> PageWords.outside(w, attempt.releasedAtMs()))
                .map(words -> ". Released " + words)
                .orElse("");
    }
}
