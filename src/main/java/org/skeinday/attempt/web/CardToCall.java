package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.BackwardSum;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.OneNumber;
import org.skeinday.attempt.action.SaidMeanwhile;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.steps.web.GateView;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.UnitSystem;

/** The Next attempt card of an entry that is to be called. */
final class CardToCall {
    /** Said before it begins: from the call on nobody can be asked. */
    private static final NowView.Line QUIET =
            new NowView.Line("outside help", "From the call on it is quiet: no advice until the attempt is closed.");

    private static final String TOO_LATE =
            "By how long winding and loading take it is too late to be inside the window.";

    private static final NowView.Choice NONE_FREE =
            new NowView.Choice("", "none yet: other entries need those that can be flown");

    private final Tx tx;
    private final Today today;
    private final BackwardSum sum;
    private final UnitSystem units;
    private final UnaryOperator<String> nameOf;

    CardToCall(Tx tx, Today today, BackwardSum sum, UnitSystem units, UnaryOperator<String> nameOf) {
        this.tx = tx;
        this.today = today;
        this.sum = sum;
        this.units = units;
        this.nameOf = nameOf;
    }

    NowCard of(EntryAdded entry, long nowMs) {
        List<ModelAdded> models = ModelStore.ofEntry(tx, entry.id());
        List<MotorsAtHand.Offer> motors = entry.own() ? MotorsAtHand.offersOrNone(tx, entry, models) : List.of();
        Optional<ComingMotor> coming = entry.own() ? ComingMotor.next(tx, entry) : Optional.empty();
        @Nullable
        MotorAdded motor =
                coming.isPresent() ? null : MotorsAtHand.assigned(motors).orElse(null);
        NowView.@Nullable Plan plan = motor == null
                ? null
                : PlanLines.of(tx, entry, null, motor, models.isEmpty() ? null : models.get(0), units);
        Optional<WindowAdded> window = today.window(entry, nowMs);
        LiveAttempt live = LiveAttempt.next(
                entry.id(),
                today.nextNumber(entry),
                models.isEmpty() ? null : models.get(0).id(),
                motor == null ? null : motor.id(),
                today.event().dayKind());
        return new NowCard(
                live,
                entry.name() + ", " + live.number().words(),
                Strips.of(live),
                OneNumber.of(live, today.flightWindow(entry), latestStart(entry, window), OptionalLong.empty(), nowMs),
                WindowClock.of(tx, today, entry, nowMs),
                plan,
                lines(entry, motors, coming.isPresent() ? 0 : 1, window, nowMs),
                new NowCard.Missing(
                        "",
                        isLate(entry, window, nowMs) ? List.of(TOO_LATE) : List.of(),
                        List.of(),
                        GateView.OPEN,
                        false,
                        false,
                        today.stopped(),
                        false),
                new NowCard.Acts(
                        "",
                        List.of(),
                        models.stream()
                                .map(m -> new NowView.Choice(m.id(), m.name()))
                                .toList(),
                        choices(motors, coming),
                        List.of(),
                        WindingPlaces.ONE,
                        List.of(),
                        List.of(),
                        false,
                        false,
                        entry.own(),
                        new NowCard.Said(
                                SaidMeanwhile.seen(
                                        tx,
                                        SaidMeanwhile.hands(
                                                entry.id(), live.number().running())),
                                "",
                                ""),
                        entry.own()
                                ? WhoDoesWhat.of(tx, entry, live.number(), nameOf)
                                        .choices(tx, entry.eventId())
                                : List.of(),
                        ""));
    }

    /** Other motors for an attempt, in the order in which they would be taken. @param quiet whether nothing is advised */
    List<NowView.Choice> spares(EntryAdded entry, AttemptNow attempt, boolean quiet) {
        return MotorsAtHand.offersOrNone(tx, entry, ModelStore.ofEntry(tx, entry.id())).stream()
                .filter(offer -> !offer.motor().id().equals(attempt.motorId()))
                .map(offer -> quiet
                        ? new NowView.Choice(
                                offer.motor().id(), offer.motor().tag() + offer.forWhom(), offer.isPlanned())
                        : choice(offer))
                .toList();
    }

    private OptionalLong latestStart(EntryAdded entry, Optional<WindowAdded> window) {
        return window.filter(w -> entry.own())
                .map(w -> OptionalLong.of(sum.latestWindingMs(w.closesAtMs())))
                .orElse(OptionalLong.empty());
    }

    private boolean isLate(EntryAdded entry, Optional<WindowAdded> window, long nowMs) {
        return entry.own()
                && window.filter(w -> w.opensAtMs() <= nowMs && sum.latestWindingMs(w.closesAtMs()) <= nowMs)
                        .isPresent();
    }

    /** @param spare which of the motors that can be flown it is: the first where the planned one is not ready */
    private List<NowView.Line> lines(
            EntryAdded entry, List<MotorsAtHand.Offer> motors, int spare, Optional<WindowAdded> window, long nowMs) {
        List<NowView.Line> lines = new ArrayList<>();
        if (motors.size() > spare && motors.get(spare).isFree()) {
            lines.add(new NowView.Line("spare", motors.get(spare).motor().tag()));
        }
        if (entry.own() && motors.isEmpty()) {
            lines.add(WhyNoMotor.line(tx, entry, false));
        }
        if (entry.own()) {
            if (TermsStore.of(tx, today.event().id()).asksForQuiet()) {
                lines.add(QUIET);
            }
            lines.addAll(
                    WhoDoesWhat.of(tx, entry, today.nextNumber(entry), nameOf).lines());
            WindingPlaces.next(tx, entry).ifPresent(lines::add);
            lines.addAll(HallLines.apart(tx, today.event().id(), () -> Stations.of(tx, entry, null), units));
            window.filter(w -> w.closesAtMs() > nowMs)
                    .map(w -> Apart.made(
                            "What is left of the window",
                            () -> TimeLeft.of(today, entry, sum, w, nowMs),
                            words -> List.of(new NowView.Line("not shown", words))))
                    .ifPresent(lines::addAll);
        }
        return lines;
    }

    /** The first is what it is called with unless somebody chooses: none that another entry needs, or while the plan's waits. */
    private List<NowView.Choice> choices(List<MotorsAtHand.Offer> motors, Optional<ComingMotor> coming) {
        List<NowView.Choice> choices =
                new ArrayList<>(motors.stream().map(this::choice).toList());
        if (coming.isPresent()) {
            choices.add(
                    0,
                    new NowView.Choice(
                            "", "none yet, by the plan: " + coming.get().words()));
        } else if (!motors.isEmpty() && MotorsAtHand.assigned(motors).isEmpty()) {
            choices.add(0, NONE_FREE);
        }
        return choices;
    }

    private NowView.Choice choice(MotorsAtHand.Offer offer) {
        return new NowView.Choice(
                offer.motor().id(),
                offer.motor().tag() + " · "
                        + units.length(Length.ofMillimetres(offer.motor().loopMm())) + " · "
                        + units.mass(Mass.ofGrams(offer.motor().massG())) + " · " + MotorUses.words(offer.uses())
                        + " · "
                        + offer.reason() + offer.forWhom(),
                offer.isPlanned());
    }
}
