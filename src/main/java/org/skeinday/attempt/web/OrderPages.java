package org.skeinday.attempt.web;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** Who flies when, for everybody in the hall. */
public final class OrderPages {
    private final ActStore record;
    private final Page page;
    private final Clock clock;

    public OrderPages(ActStore record, Page page, Clock clock) {
        this.record = record;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        routes.get(
                "/results/order",
                Role.SPECTATOR,
                ctx -> page.show(ctx, "Order of flight", "attempt/order.jte", view()));
        routes.get(
                "/results/order/part",
                Role.SPECTATOR,
                ctx -> page.shared(ctx, "", clock, "attempt/_order.jte", this::view));
    }

    private OrderView view() {
        long nowMs = clock.millis();
        return record.read(tx -> Today.read(tx, nowMs).map(today -> view(today, nowMs)))
                .orElse(new OrderView("No event yet", "", List.of(), List.of()));
    }

    private OrderView view(Today today, long nowMs) {
        Predicate<EntryAdded> canFly = entry ->
                called(today, entry).isPresent() || (today.mayStillFly(entry) && !hasClosed(today, entry, nowMs));
        return new OrderView(
                finding(today, nowMs),
                today.event().name() + (today.stopped() ? ". The hall stands still: no window runs." : ""),
                turns(today, canFly, nowMs),
                turns(today, canFly.negate(), nowMs));
    }

    private static String finding(Today today, long nowMs) {
        return today.underWay()
                .map(a -> "Now: " + today.title(a))
                .or(() -> today.nextEntry(nowMs)
                        .map(entry -> "Next: " + entry.name() + ", "
                                + today.nextNumber(entry).words()))
                .orElseGet(today::whyNone);
    }

    private List<OrderView.Turn> turns(Today today, Predicate<EntryAdded> which, long nowMs) {
        return today.byWindow().stream()
                .filter(which)
                .map(entry -> turn(today, entry, nowMs))
                .toList();
    }

    private OrderView.Turn turn(Today today, EntryAdded entry, long nowMs) {
        Optional<AttemptNow> called = called(today, entry);
        return new OrderView.Turn(
                today.window(entry, nowMs).map(this::hours).orElse(""),
                entry.name(),
                entry.team().equals(entry.name()) ? "" : entry.team(),
                called.map(a -> PhaseWords.of(today.live(a.id())) + ", "
                                + a.number().words())
                        .orElseGet(() -> waits(today, entry, nowMs)),
                called.isPresent());
    }

    private static String waits(Today today, EntryAdded entry, long nowMs) {
        if (!today.mayStillFly(entry)) {
            return "has had its attempts";
        }
        return hasClosed(today, entry, nowMs)
                ? "the window has closed"
                : today.nextNumber(entry).words() + " is next";
    }

    private static Optional<AttemptNow> called(Today today, EntryAdded entry) {
        return today.open().stream().filter(a -> a.entryId().equals(entry.id())).findFirst();
    }

    private static boolean hasClosed(Today today, EntryAdded entry, long nowMs) {
        return today.window(entry, nowMs)
                .filter(window -> window.closesAtMs() <= nowMs)
                .isPresent();
    }

    private String hours(WindowAdded window) {
        return PageWords.clock(window.opensAtMs(), clock.getZone()) + "–"
                + PageWords.clock(window.closesAtMs(), clock.getZone());
    }
}
