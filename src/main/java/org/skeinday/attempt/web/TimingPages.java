package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.action.WatchDeeds;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Record;
import org.skeinday.units.FlightTime;

/** Timing: one watch on one device. */
public final class TimingPages {
    private final Record record;
    private final FormActs forms;
    private final Page page;

    public TimingPages(Record record, FormActs forms, Page page) {
        this.record = record;
        this.forms = forms;
        this.page = page;
    }

    public void register(Routes routes) {
        routes.get("/timing", Role.TIMEKEEPER, ctx -> page.show(ctx, "Timing", "attempt/timing.jte", view(ctx, "")));
        routes.get("/timing/part", Role.TIMEKEEPER, ctx -> part(ctx, ""));
        routes.post("/watch/take", Role.TIMEKEEPER, this::take);
    }

    private void take(Context ctx) {
        String slot = NowPages.field(ctx, "slot");
        if (!slot.matches("[1-3]")) {
            ctx.status(422);
            part(ctx, "A watch is 1, 2 or 3, but was '" + slot + "'");
            return;
        }
        var content = new WatchDeeds.TakePlace(
                NowPages.field(ctx, "attempt"),
                Integer.parseInt(slot),
                NowPages.field(ctx, "over").equals("yes"));
        part(ctx, FormActs.words(ctx, forms.submit(ctx, "watch.take", content)));
    }

    private void part(Context ctx, String message) {
        page.fragment(ctx, "attempt/_timing.jte", view(ctx, message));
    }

    private TimingView view(Context ctx, String message) {
        Caller caller = Access.callerOf(ctx);
        return record.read(tx -> Today.read(tx)
                .flatMap(today -> toTime(tx, today, caller).map(attempt -> view(tx, today, attempt, caller, message)))
                .orElse(new TimingView("Nobody is called", "", 0, false, message, "", List.of())));
    }

    /** The attempt under way, else the one that this device has just timed: its reading stays in sight. */
    private static Optional<AttemptNow> toTime(Tx tx, Today today, Caller caller) {
        return today.underWay()
                .or(() -> AttemptStore.lastTimedBy(tx, today.event().id(), caller.device()));
    }

    private TimingView view(Tx tx, Today today, AttemptNow attempt, Caller caller, String message) {
        List<WatchTaken> taken = AttemptStore.watches(tx, attempt.id());
        int slot = ownPlace(tx, attempt, taken, caller);
        boolean givenOver = slot > 0
                && taken.stream().noneMatch(w -> w.slot() == slot && w.device().equals(caller.device()));
        String reading = Readings.thatCount(AttemptStore.readings(tx, attempt.id())).stream()
                .filter(r -> r.slot() == slot)
                .findFirst()
                .map(r -> "Saved: " + new FlightTime(r.durationMs()).text(2))
                .orElse("");
        return new TimingView(
                today.entry(attempt.entryId()).name() + ", attempt " + attempt.number(),
                attempt.id(),
                slot,
                givenOver,
                message,
                reading,
                places(today.event().timekeepers(), taken));
    }

    /** A place taken over by another device stays in sight here: what is tapped on it is evidence too. */
    private static int ownPlace(Tx tx, AttemptNow attempt, List<WatchTaken> now, Caller caller) {
        return Stream.concat(now.stream(), AttemptStore.everWatched(tx, attempt.id(), caller.device()).stream())
                .filter(w -> w.device().equals(caller.device()))
                .mapToInt(WatchTaken::slot)
                .findFirst()
                .orElse(0);
    }

    private List<TimingView.Place> places(int timekeepers, List<WatchTaken> taken) {
        return IntStream.rangeClosed(1, timekeepers)
                .mapToObj(slot -> new TimingView.Place(slot, takenBy(slot, taken)))
                .toList();
    }

    private String takenBy(int slot, List<WatchTaken> taken) {
        return taken.stream()
                .filter(w -> w.slot() == slot)
                .findFirst()
                .map(w -> w.device().equals(Caller.LAPTOP)
                        ? "taken by the laptop"
                        : w.personId().isEmpty()
                                ? "taken by another device"
                                : "taken by " + record.people().name(w.personId()))
                .orElse("");
    }
}
