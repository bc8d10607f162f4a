package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.HallStopped;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.ResultFinal;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.attempt.action.MakeFinal;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.HallStops;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.contest.DayKind;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.standing.FlightTally;

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
        routes.get(
                "/results",
                Role.SPECTATOR,
                ctx -> page.show(ctx, "Result sheet", "attempt/results.jte", view(division(ctx), roleOf(ctx), "")));
        routes.get("/results/part", Role.SPECTATOR, ctx -> {
            String division = division(ctx);
            Role role = roleOf(ctx);
            page.shared(ctx, division + " " + role, clock, "attempt/_results.jte", () -> view(division, role, ""));
        });
    }

    /** The least one that sees the same. */
    private static Role roleOf(Context ctx) {
        Role role = Access.callerOf(ctx).role();
        return role.covers(Role.CAPTAIN) ? Role.CAPTAIN : role.covers(Role.VIEWER) ? Role.VIEWER : Role.SPECTATOR;
    }

    private static String division(Context ctx) {
        String asked = ctx.queryParam("division");
        return asked == null ? "" : asked;
    }

    /** The sheet as it stands. @param division of which the places are made; null or empty for all */
    public static Optional<ResultSheet> sheet(ActStore record, @Nullable String division) {
        return record.read(tx -> Today.read(tx).map(today -> today.sheet(tx, division == null ? "" : division)));
    }

    /** Whether the result is final; empty before the first event. */
    public static Optional<ResultStanding> standing(ActStore record, ZoneId zone) {
        return record.read(tx -> Today.read(tx).map(today -> ResultStanding.of(tx, today, zone)));
    }

    /** The rules of its score in words; empty before the first event. */
    public static String rules(ActStore record) {
        return record.read(tx -> Today.read(tx))
                .map(today -> PageWords.scoreInFull(today) + PageWords.flightRules(today))
                .orElse("");
    }

    /** What was changed of them after a flight was official, one sentence each. */
    public static List<String> changes(ActStore record, ZoneId zone) {
        return record.read(tx -> Today.read(tx).map(today -> ChangeWords.ofEvent(tx, today.event(), zone)))
                .orElse(List.of());
    }

    private ResultView view(String division, Role role, String wrong) {
        return record.read(tx -> Today.read(tx, clock.millis()).map(today -> view(tx, today, division, role, wrong)))
                .orElse(new ResultView(
                        "No event yet",
                        "",
                        List.of(),
                        false,
                        "",
                        "Score",
                        List.of(),
                        List.of(),
                        "",
                        List.of(),
                        List.of(),
                        ResultView.Standing.NONE,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        false));
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

    private ResultView.Standing standing(Tx tx, Today today, Role role, String wrong) {
        ResultStanding standing = ResultStanding.of(tx, today, clock.getZone());
        boolean may = role == Role.CAPTAIN
                && today.event().dayKind() == DayKind.HOSTING
                && !standing.state().isFinal();
        return new ResultView.Standing(
                standing.words(),
                standing.state().isFinal(),
                standing.changes(),
                may,
                may ? MakeFinal.owed(tx, today.event(), clock.millis()) : List.of(),
                standing.seen(),
                standing.state().last().map(ResultFinal::version).orElse(0),
                wrong);
    }

    /** The whole sheet with why something was refused. */
    void part(Context ctx, String wrong) {
        String division = division(ctx);
        Role role = roleOf(ctx);
        page.fragment(ctx, "attempt/_results.jte", view(division, role, wrong));
    }

    private ResultView view(Tx tx, Today today, String division, Role role, String wrong) {
        ResultSheet sheet = today.sheet(tx, division);
        List<ResultView.Row> rows = ResultWords.rows(sheet);
        return new ResultView(
                ResultWords.finding(sheet),
                ResultWords.about(sheet, PageWords.scoreInFull(today)),
                divisions(today, division),
                role == Role.CAPTAIN && today.event().dayKind() == DayKind.HOSTING,
                division.isEmpty() ? "" : "?division=" + encoded(division),
                PageWords.score(today),
                IntStream.rangeClosed(1, sheet.columns()).boxed().toList(),
                ResultWords.ticks(sheet),
                ResultWords.axisWords(sheet),
                rows,
                ResultWords.legend(rows),
                standing(tx, today, role, wrong),
                hows(tx, today, sheet, quiet(tx)),
                HallStops.ofEvent(tx, today.event().id()).stream()
                        .map(this::stop)
                        .toList(),
                ChangeWords.ofEvent(tx, today.event(), clock.getZone()),
                role == Role.SPECTATOR ? List.of() : OpenAttempt.of(today),
                role != Role.SPECTATOR);
    }

    /** Where all are of one there is none to choose. */
    private static List<ResultView.Division> divisions(Today today, String shown) {
        List<String> names = today.divisions();
        return names.size() < 2
                ? List.of()
                : Stream.concat(Stream.of(""), names.stream())
                        .map(name -> new ResultView.Division(
                                name.isEmpty() ? "All" : name,
                                "/results" + (name.isEmpty() ? "" : "?division=" + encoded(name)),
                                name.equals(shown)))
                        .toList();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private String stop(HallStopped stop) {
        Long until = stop.resumedAtMs();
        return PageWords.clock(stop.atMs(), clock.getZone())
                + (until == null ? " on" : " to " + PageWords.clock(until, clock.getZone())) + ": " + stop.why();
    }

    private static List<ResultView.How> hows(Tx tx, Today today, ResultSheet sheet, Map<String, String> quiet) {
        Set<String> shown =
                sheet.lines().stream().map(line -> line.entry().id()).collect(Collectors.toSet());
        boolean hosting = today.event().dayKind() == DayKind.HOSTING;
        Map<String, List<Protest>> protests = ResultRecord.protests(tx);
        Map<String, String> standings = new HashMap<>();
        today.entries()
                .forEach(entry -> today.tally(entry).verdicts().stream()
                        .filter(v -> v.standing() != FlightTally.Standing.OFFICIAL)
                        .forEach(v -> standings.put(v.id(), ". As a flight: " + v.reason())));
        return today.attempts().stream()
                .filter(a -> shown.contains(a.entryId()))
                .filter(a -> a.how() != null || a.voidReason() != null || protests.containsKey(a.id()))
                .map(a -> new ResultView.How(
                        a.id(),
                        today.entry(a.entryId()).name() + ", " + a.number().words(),
                        came(a, today)
                                + (official(today, a) ? standings.getOrDefault(a.id(), "") : "")
                                + (official(today, a) && hosting ? "" : outside(today, a))
                                + (a.aloft().words().isEmpty()
                                        ? ""
                                        : ". Aloft: " + a.aloft().words())
                                + quiet.getOrDefault(a.id(), ""),
                        official(today, a) && hosting
                                ? ResultRecord.signatures(tx, a.id()).words()
                                : "",
                        protests.getOrDefault(a.id(), List.of()).stream()
                                .map(p -> p.stillOpen() ? "protested" : "protest settled")
                                .distinct()
                                .collect(Collectors.joining(", "))))
                .toList();
    }

    private static boolean official(Today today, AttemptNow attempt) {
        return today.live(attempt.id()).phase().name() == AttemptPhase.Name.OFFICIAL;
    }

    private static String came(AttemptNow attempt, Today today) {
        String how = attempt.how();
        String reason = attempt.voidReason();
        return how != null
                ? how
                : PhaseWords.of(today.live(attempt.id())) + (reason == null ? ", not official yet" : ": " + reason);
    }

    private static String outside(Today today, AttemptNow attempt) {
        return today.windowOf(attempt)
                .flatMap(w -> PageWords.outside(w, attempt.releasedAtMs()))
                .map(words -> ". Released " + words)
                .orElse("");
    }
}
