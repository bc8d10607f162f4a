package org.skeinday.attempt.web;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
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
        Map<String, AttemptNow> called = today.open().stream()
                .collect(Collectors.toMap(AttemptNow::entryId, Function.identity(), (urgent, other) -> urgent));
        Map<Boolean, List<OrderView.Turn>> byOver = today.byWindow().stream()
                .map(entry -> stand(today, entry, called.get(entry.id()), nowMs))
                .collect(Collectors.partitioningBy(Stand::over, Collectors.mapping(Stand::turn, Collectors.toList())));
        return new OrderView(
                finding(today, nowMs),
                today.event().name() + (today.stopped() ? ". The hall stands still: no window runs." : ""),
                byOver.getOrDefault(false, List.of()),
                byOver.getOrDefault(true, List.of()));
    }

    private static String finding(Today today, long nowMs) {
        return today.underWay()
                .map(a -> "Now: " + today.title(a))
                .or(() -> today.nextEntry(nowMs)
                        .map(entry -> "Next: " + entry.name() + ", "
                                + today.nextNumber(entry).words()))
                .orElseGet(today::whyNone);
    }

    /** @param over whether it cannot fly any more */
    private record Stand(OrderView.Turn turn, boolean over) {}

    private Stand stand(Today today, EntryAdded entry, @Nullable AttemptNow called, long nowMs) {
        Optional<WindowAdded> window = today.window(entry, nowMs);
        boolean hasHad = !today.mayStillFly(entry);
        boolean closed = window.filter(w -> w.closesAtMs() <= nowMs).isPresent();
        String state = called != null
                ? PhaseWords.of(today.live(called.id())) + ", "
                        + called.number().words()
                : hasHad
                        ? "has had its attempts"
                        : closed
                                ? "the window has closed"
                                : today.nextNumber(entry).words() + " is next";
        OrderView.Turn turn = new OrderView.Turn(
                window.map(this::hours).orElse(""),
                entry.name(),
                entry.team().equals(entry.name()) ? "" : entry.team(),
                state,
                called != null);
        return new Stand(turn, called == null && (hasHad || closed));
    }

    private String hours(WindowAdded window) {
        return PageWords.clock(window.opensAtMs(), clock.getZone()) + "–"
                + PageWords.clock(window.closesAtMs(), clock.getZone());
    }
}
