package org.skeinday.attempt.web;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.HallStopped;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.attempt.store.HallStops;
import org.skeinday.contest.EntryAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** The result for a screen that the hall sees: who flies, by which clock, and who stands where. */
public final class WallPages {
    private final Clock clock;
    private final ActStore record;
    private final Page page;

    public WallPages(ActStore record, Page page, Clock clock) {
        this.clock = clock;
        this.record = record;
        this.page = page;
    }

    public void register(Routes routes) {
        routes.get(
                "/results/wall",
                Role.SPECTATOR,
                ctx -> page.show(ctx, "Results on the wall", "attempt/wall.jte", view()));
        routes.get(
                "/results/wall/part",
                Role.SPECTATOR,
                ctx -> page.shared(ctx, "", clock, "attempt/_wall.jte", this::view));
    }

    private WallView view() {
        long nowMs = clock.millis();
        return record.read(tx -> Today.read(tx, nowMs).map(today -> view(tx, today, nowMs)))
                .orElse(new WallView(
                        "No event yet",
                        new WallView.Head("", "", 0, WindowClock.NONE, false),
                        "",
                        WindowClock.NONE,
                        "",
                        List.of(),
                        List.of(),
                        "",
                        false,
                        "",
                        ""));
    }

    private WallView view(Tx tx, Today today, long nowMs) {
        ResultSheet sheet = today.sheet(tx, "");
        Optional<AttemptNow> shown = shown(today);
        Optional<EntryAdded> next = today.nextEntry(nowMs)
                .filter(entry -> shown.map(a -> !a.entryId().equals(entry.id())).orElse(false));
        return new WallView(
                today.event().name(),
                head(tx, today, shown, nowMs),
                next.map(entry -> "Next: " + entry.name()).orElse(""),
                WindowClock.of(next.flatMap(today::flightWindow), nowMs),
                last(today, sheet),
                IntStream.rangeClosed(1, sheet.columns()).boxed().toList(),
                ResultWords.rows(sheet),
                PageWords.score(today),
                sheet.hasProvisional(),
                ResultStanding.of(tx, today, clock.getZone()).words(),
                ChangeWords.last(tx, today.event(), clock.getZone()).orElse(""));
    }

    /** In the air before all others: it is what the hall looks at. */
    private static Optional<AttemptNow> shown(Today today) {
        List<AttemptNow> open = today.open();
        return open.stream()
                .filter(a -> today.live(a.id()).phase().name() == AttemptPhase.Name.IN_THE_AIR)
                .findFirst()
                .or(() -> open.stream().findFirst());
    }

    private WallView.Head head(Tx tx, Today today, Optional<AttemptNow> shown, long nowMs) {
        Optional<HallStopped> stopped = HallStops.now(tx, today.event().id());
        if (stopped.isPresent()) {
            return new WallView.Head(
                    stopped.get().why() + ". Run wound motors back; no winding, no release.",
                    "Stop",
                    0,
                    WindowClock.NONE,
                    true);
        }
        return shown.map(attempt -> under(today, attempt, nowMs))
                .orElseGet(() -> today.nextEntry(nowMs)
                        .map(entry -> new WallView.Head(
                                "next · " + today.nextNumber(entry).words(),
                                entry.name(),
                                0,
                                WindowClock.of(today.flightWindow(entry), nowMs),
                                false))
                        .orElse(new WallView.Head("", "", 0, WindowClock.NONE, false)));
    }

    private static WallView.Head under(Today today, AttemptNow attempt, long nowMs) {
        LiveAttempt live = today.live(attempt.id());
        EntryAdded entry = today.entry(attempt.entryId());
        boolean flies = live.phase().name() == AttemptPhase.Name.IN_THE_AIR;
        return new WallView.Head(
                PhaseWords.of(live) + " · " + attempt.number().words(),
                entry.name(),
                flies ? live.phase().since().orElse(0L) : 0,
                flies ? WindowClock.NONE : WindowClock.of(today.flightWindow(entry), nowMs),
                false);
    }

    private static String last(Today today, ResultSheet sheet) {
        return today.attempts().stream()
                .filter(a -> a.officialMs() != null && a.closedAtMs() != null)
                .max(java.util.Comparator.comparingLong(a -> a.closedAtMs() == null ? 0 : a.closedAtMs()))
                .map(a -> "Last: " + today.entry(a.entryId()).name() + " "
                        + PageWords.cell(today.live(a.id()), today.event())
                        + (isProvisional(sheet, a.id()) ? ", provisional" : ""))
                .orElse("");
    }

    private static boolean isProvisional(ResultSheet sheet, String attempt) {
        return sheet.lines().stream()
                .flatMap(line -> line.attempts().stream())
                .flatMap(List::stream)
                .anyMatch(t -> t.attempt().id().equals(attempt) && t.isProvisional());
    }
}
