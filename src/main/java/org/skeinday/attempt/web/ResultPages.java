package org.skeinday.attempt.web;

import java.time.Clock;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Record;
import org.skeinday.standing.ScoreRule;
import org.skeinday.standing.Standings;
import org.skeinday.units.FlightTime;

/** The result sheet: attempts, official times and how they came about, the order. */
public final class ResultPages {
    private final Clock clock;
    private final Record record;
    private final Page page;

    public ResultPages(Record record, Page page, Clock clock) {
        this.clock = clock;
        this.record = record;
        this.page = page;
    }

    public void register(Routes routes) {
        routes.get("/results", Role.VIEWER, ctx -> page.show(ctx, "Result sheet", "attempt/results.jte", view()));
        routes.get(
                "/results/part",
                Role.VIEWER,
                ctx -> page.shared(ctx, "", clock.millis(), "attempt/_results.jte", this::view));
    }

    private ResultView view() {
        return record.read(tx -> Today.read(tx).map(today -> view(today, quiet(tx))))
                .orElse(new ResultView("No event yet", "Score", List.of(), List.of(), List.of()));
    }

    /** When nobody was helped, in words, by attempt. */
    private Map<String, String> quiet(Tx tx) {
        Map<String, String> quiet = new HashMap<>();
        AttemptStore.quiet(tx)
                .forEach(q -> quiet.put(
                        q.attemptId(),
                        ". Nobody was helped from " + Words.clock(q.fromMs(), clock.getZone())
                                + (q.toMs() == null ? " on" : " to " + Words.clock(q.toMs(), clock.getZone()))));
        return quiet;
    }

    private static ResultView view(Today today, Map<String, String> quiet) {
        ScoreRule rule = ScoreRule.of(today.event());
        Map<String, List<Long>> times = new LinkedHashMap<>();
        today.entries().forEach(entry -> times.put(entry.name(), official(today, entry)));
        List<ResultView.Row> rows = Standings.order(times, rule).stream()
                .map(placed -> row(today, placed, rule))
                .toList();
        List<Integer> numbers =
                IntStream.rangeClosed(1, today.event().attempts()).boxed().toList();
        return new ResultView(
                today.event().name() + " · " + Words.score(today.event()).toLowerCase(Locale.ROOT),
                Words.score(today.event()),
                numbers,
                rows,
                hows(today, quiet));
    }

    private static List<Long> official(Today today, EntryAdded entry) {
        return today.of(entry).stream()
                .map(AttemptNow::officialMs)
                .flatMap(ms -> Optional.ofNullable(ms).stream())
                .toList();
    }

    private static ResultView.Row row(Today today, Standings.Placed placed, ScoreRule rule) {
        EntryAdded entry = today.entries().stream()
                .filter(e -> e.name().equals(placed.entry()))
                .findFirst()
                .orElseThrow();
        List<AttemptNow> counted = today.of(entry).stream()
                .filter(a -> a.state() != State.SCRUBBED)
                .toList();
        List<String> cells = IntStream.range(0, today.event().attempts())
                .mapToObj(i -> i < counted.size() ? cell(today, counted.get(i), i + 1) : "–")
                .toList();
        String score = placed.countedMs()
                .map(ms -> score(ms, rule, Words.decimals(today.event())))
                .orElse("–");
        return new ResultView.Row(
                placed.place() == 0 ? "" : String.valueOf(placed.place()), entry.name(), cells, score);
    }

    /** With the attempt's own number where a scrubbed one before it has moved it to another column. */
    private static String cell(Today today, AttemptNow attempt, int column) {
        String words = Words.cell(attempt, today.event());
        return attempt.number() == column ? words : words + " (no. " + attempt.number() + ")";
    }

    /** A mean has its own hundredths, whatever the rules round a single time to. */
    private static String score(long countedMs, ScoreRule rule, int decimals) {
        return new FlightTime(rule.shownMs(countedMs)).text(rule.divisor() == 1 ? decimals : 2);
    }

    private static List<ResultView.How> hows(Today today, Map<String, String> quiet) {
        return today.attempts().stream()
                .filter(a -> a.how() != null || a.voidReason() != null)
                .map(a -> new ResultView.How(
                        today.entry(a.entryId()).name() + ", attempt " + a.number(),
                        (a.how() != null ? a.how() : a.state().word() + ": " + a.voidReason())
                                + outside(today, a)
                                + quiet.getOrDefault(a.id(), "")))
                .toList();
    }

    private static String outside(Today today, AttemptNow attempt) {
        return today.window(today.entry(attempt.entryId()))
                .flatMap(w -> Words.outside(w, attempt.releasedAtMs()))
                .map(words -> ". Released " + words)
                .orElse("");
    }
}
