package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.FullHands;
import org.skeinday.attempt.Hands;
import org.skeinday.attempt.Marks;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.action.ResultActions;
import org.skeinday.attempt.action.SaidMeanwhile;
import org.skeinday.attempt.action.TakenInAir;
import org.skeinday.attempt.action.TimeDoubts;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.HandsAtMotor;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.device.web.PinGate;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.steps.web.StripView;
import org.skeinday.timing.HoldRule;
import org.skeinday.units.FlightTime;

/** Timing: one watch on one device. */
public final class TimingPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;

    private final Clock clock;
    private final PinGate pins;

    public TimingPages(ActStore record, FormActs forms, Page page, Clock clock, PinGate pins) {
        this.pins = pins;
        this.clock = clock;
        this.record = record;
        this.forms = forms;
        this.page = page;
    }

    public void register(Routes routes) {
        routes.get(
                "/timing",
                Role.TIMEKEEPER,
                ctx -> page.show(ctx, "Timing", "attempt/timing.jte", view(ctx, FormErrors.none())));
        routes.get("/timing/part", Role.TIMEKEEPER, ctx -> part(ctx, ""));
        routes.post("/watch/take", Role.TIMEKEEPER, this::take);
        routes.post(
                "/watch/type",
                Role.TIMEKEEPER,
                ctx -> part(
                        ctx,
                        FormActs.errors(
                                ctx,
                                forms.submit(
                                        ctx, "watch.type", NowForms.typedTime(ctx, NowPages.field(ctx, "attempt"))),
                                "")));
        routes.post("/watch/sign", Role.TIMEKEEPER, this::sign);
    }

    private void take(Context ctx) {
        String slot = NowPages.field(ctx, "slot");
        if (!slot.matches("[1-3]")) {
            ctx.status(422);
            part(ctx, "A watch is 1, 2 or 3, but was '" + slot + "'");
            return;
        }
        String problem = GivenPin.problem(ctx, pins);
        if (!problem.isEmpty()) {
            ctx.status(422);
            part(ctx, FormErrors.of(ctx).with("own", problem));
            return;
        }
        part(ctx, FormActs.errors(ctx, forms.submit(ctx, "watch.take", NowForms.takenWatch(ctx, slot)), ""));
    }

    /** Its own device signs for a watch. */
    private void sign(Context ctx) {
        String seen = NowPages.field(ctx, "seen");
        String slot = NowPages.field(ctx, "slot");
        var content = new ResultActions.Sign(
                NowPages.field(ctx, "attempt"),
                AttemptSigned.watch(slot.matches("[1-3]") ? Integer.parseInt(slot) : 0),
                seen.matches("\\d{1,9}") ? Long.parseLong(seen) : -1,
                false);
        part(ctx, FormActs.words(ctx, forms.submit(ctx, "attempt.sign", content)));
    }

    private void part(Context ctx, String message) {
        part(ctx, FormErrors.none().with("", message));
    }

    private void part(Context ctx, FormErrors form) {
        page.fragment(ctx, "attempt/_timing.jte", view(ctx, form));
    }

    private TimingView view(Context ctx, FormErrors form) {
        Caller caller = Access.callerOf(ctx);
        return record.read(tx -> Today.read(tx, clock.millis())
                .flatMap(today -> OwnWatch.toTime(tx, today, caller, asked(ctx))
                        .map(attempt -> view(tx, today, attempt, caller, askedSlot(ctx), form)))
                .orElse(nobody(form)));
    }

    private TimingView nobody(FormErrors form) {
        return new TimingView(
                "Nobody is called",
                "",
                true,
                StripView.NONE,
                WindowClock.of(Optional.empty(), clock.millis()),
                false,
                false,
                false,
                FullHands.FREE,
                0,
                -1,
                0,
                0,
                false,
                form,
                "",
                "",
                0,
                "",
                false,
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static AttemptPhase.Name name(Today today, AttemptNow attempt) {
        return today.live(attempt.id()).phase().name();
    }

    /** The attempt that was chosen beside another one, or that the form was about. */
    private static String asked(Context ctx) {
        String chosen = ctx.queryParam("attempt");
        return chosen == null ? NowPages.field(ctx, "attempt") : chosen;
    }

    /** Which of its watches; 0 where nobody said. */
    private static int askedSlot(Context ctx) {
        String chosen = ctx.queryParam("slot");
        String slot = chosen == null ? NowPages.field(ctx, "slot") : chosen;
        return slot.matches("[1-3]") ? Integer.parseInt(slot) : 0;
    }

    private TimingView view(Tx tx, Today today, AttemptNow attempt, Caller caller, int asked, FormErrors form) {
        List<WatchTaken> taken = WatchStore.watches(tx, attempt.id());
        int slot = OwnWatch.place(tx, attempt, taken, caller, asked);
        boolean givenOver = slot > 0
                && taken.stream().noneMatch(w -> w.slot() == slot && w.device().equals(caller.device()));
        EntryAdded entry = today.entry(attempt.entryId());
        AttemptPhase.Name name = name(today, attempt);
        return new TimingView(
                today.title(attempt),
                attempt.id(),
                !today.live(attempt.id()).isUnderWay(),
                Strips.of(today.live(attempt.id())),
                WindowClock.of(name.isBeforeRelease() ? today.flightWindow(entry) : Optional.empty(), clock.millis()),
                name.isBeforeRelease(),
                slot > 0
                        && !name.hasFlown()
                        && new Marks(WatchStore.marked(tx, attempt.id()))
                                .release(slot)
                                .isPresent(),
                name == AttemptPhase.Name.BROKE,
                HandsAtMotor.of(tx, today.live(attempt.id()), caller.person()),
                today.rules().hold().map(HoldRule::watchedMs).orElse(-1L),
                signing(tx, today, attempt, slot),
                aloftMs(tx, today, attempt, caller, slot),
                slot,
                givenOver,
                form,
                reading(tx, today, attempt, slot),
                waits(tx, today, attempt, taken),
                typesTimes(today, attempt),
                SaidMeanwhile.seenWatches(tx, attempt.id(), typesTimes(today, attempt)),
                today.live(attempt.id()).isCaught() && today.rules().hold().isPresent(),
                places(today.event().timekeepers(), taken),
                OwnWatch.toSign(tx, today, attempt, slot, caller),
                OwnWatch.others(tx, today, attempt, slot, caller),
                name == AttemptPhase.Name.IN_THE_AIR && slot > 0 ? List.of() : OwnWatch.beside(tx, today, attempt));
    }

    private static long aloftMs(Tx tx, Today today, AttemptNow attempt, Caller caller, int slot) {
        Long released = attempt.releasedAtMs();
        return released != null
                        && name(today, attempt) == AttemptPhase.Name.IN_THE_AIR
                        && (slot == 0 || TakenInAir.is(tx, caller.device(), attempt, slot))
                ? released
                : 0;
    }

    private static String reading(Tx tx, Today today, AttemptNow attempt, int slot) {
        String own = Readings.thatCount(WatchStore.readings(tx, attempt.id())).stream()
                .filter(r -> r.slot() == slot)
                .findFirst()
                .map(r -> "Saved: " + new FlightTime(r.durationMs()).text(2))
                .orElse("");
        Long official = attempt.officialMs();
        return official == null || name(today, attempt) != AttemptPhase.Name.OFFICIAL
                ? own
                : own + (own.isEmpty() ? "" : ". ") + "Official time: " + PageWords.time(official, today.event())
                        + (hasSigned(tx, attempt, slot) ? ". Signed." : "");
    }

    /** What its time still waits for, and whom; empty for nothing. */
    private String waits(Tx tx, Today today, AttemptNow attempt, List<WatchTaken> taken) {
        return name(today, attempt) != AttemptPhase.Name.LANDED
                        || AttemptStore.quietNow(tx).isPresent()
                ? ""
                : WatchesTold.of(
                                tx,
                                today.live(attempt.id()),
                                today.event(),
                                Optional.of(TimeDoubts.of(tx, attempt, today.event())),
                                true)
                        .awaited()
                        .words(slot -> taken.stream()
                                .filter(watch -> watch.slot() == slot)
                                .map(watch -> WatchWords.who(watch, record.people()::name))
                                .findFirst()
                                .orElse(""))
                        .orElse("");
    }

    /** How many watches a hand watch may stand for; 0 while none may. */
    private static int typesTimes(Today today, AttemptNow attempt) {
        return AttemptActs.of(today.live(attempt.id()), Hands.TIMEKEEPER).contains(AttemptAct.TYPE_TIME)
                ? today.event().timekeepers()
                : 0;
    }

    private static boolean hasSigned(Tx tx, AttemptNow attempt, int slot) {
        return slot > 0 && ResultRecord.signatures(tx, attempt.id()).has(AttemptSigned.watch(slot));
    }

    /** The time that this watch has still to sign, -1 for none. */
    private static long signing(Tx tx, Today today, AttemptNow attempt, int slot) {
        Long official = attempt.officialMs();
        if (official == null
                || name(today, attempt) != AttemptPhase.Name.OFFICIAL
                || today.event().dayKind() != DayKind.HOSTING) {
            return -1;
        }
        return ResultRecord.signatures(tx, attempt.id()).lacks(AttemptSigned.watch(slot)) ? official : -1;
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
