package org.skeinday.paper.web;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptCount;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.BackwardSum;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.attempt.PhaseStrip;
import org.skeinday.attempt.store.Aims;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.HallWindows;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.attempt.store.StepsStore;
import org.skeinday.attempt.web.ComingMotor;
import org.skeinday.attempt.web.HallLines;
import org.skeinday.attempt.web.MotorsAtHand;
import org.skeinday.attempt.web.WhoDoesWhat;
import org.skeinday.attempt.web.WhyNoMotor;
import org.skeinday.attempt.web.WindingPlaces;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.Direction;
import org.skeinday.motor.MotorAdded;
import org.skeinday.paper.AttemptCard;
import org.skeinday.paper.AttemptCard.Line;
import org.skeinday.paper.CardOrder;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.standing.Scoring;
import org.skeinday.units.Sentence;
import org.skeinday.units.UnitSystem;

/** The cards of an event: one for each attempt that own entries still have. */
final class Cards {
    private final Tx tx;
    private final EventAdded event;
    private final UnitSystem units;
    private final UnaryOperator<String> nameOf;
    private final long nowMs;
    private final MotorUses uses;
    private final BackwardSum sum;
    private final Scoring scoring;

    /** @param nowMs until which a window waits while the hall stands still, ms since 1970 UTC */
    Cards(Tx tx, EventAdded event, UnitSystem units, UnaryOperator<String> nameOf, long nowMs) {
        this.tx = tx;
        this.event = event;
        this.units = units;
        this.nameOf = nameOf;
        this.nowMs = nowMs;
        this.uses = MotorUseStore.all(tx);
        FlightRules rules = FlightRulesStore.of(tx, event.id());
        this.scoring = Scoring.of(event, rules);
        this.sum = new BackwardSum(Estimate.ofAttempts(StepsStore.ofOwn(tx)), rules.mustLandInside());
    }

    List<AttemptCard> all() {
        List<AttemptCard> cards = new ArrayList<>();
        List<AttemptNow> attempts = AttemptStore.ofEvent(tx, event.id());
        MotorsAtHand atHand = new MotorsAtHand(tx);
        for (EntryAdded entry : EntryStore.ofEvent(tx, event.id())) {
            if (entry.own()) {
                List<AttemptNow> own = attempts.stream()
                        .filter(a -> a.entryId().equals(entry.id()))
                        .toList();
                int left = OfficialFlights.toCome(own, scoring);
                List<MotorAdded> motors = atHand.own(entry);
                List<MotorAdded> flyable = atHand.offers(entry, ModelStore.ofEntry(tx, entry.id())).stream()
                        .map(MotorsAtHand.Offer::motor)
                        .toList();
                AttemptNumber number = next(own);
                Map<String, Integer> onCards = new HashMap<>();
                for (int i = 0; i < left; i++) {
                    List<MotorAdded> order = plannedFirst(entry, number, motors, flyable, i);
                    Optional<ComingMotor> coming = ComingMotor.of(tx, atHand, entry, number);
                    coming.ifPresent(planned -> first(order, planned.motor()));
                    Optional<MotorAdded> first = motor(order, 0);
                    Optional<MotorAdded> spare = order.size() > 1 ? motor(order, 1) : Optional.empty();
                    String how = coming.map(ComingMotor::words)
                            .orElseGet(() -> first.isPresent() ? "" : WhyNoMotor.words(tx, atHand, entry));
                    cards.add(card(entry, number, new Flown(first, spare, how, onCards)));
                    first.ifPresent(motor -> onCards.merge(motor.id(), 1, Integer::sum));
                    number = number.following();
                }
            }
        }
        return cards;
    }

    private AttemptNumber next(List<AttemptNow> own) {
        List<AttemptCount.Tried> tried =
                own.stream().map(AttemptCount.Tried::of).toList();
        return AttemptCount.of(tried, scoring, !event.ofPractice()).next();
    }

    /** From the one whose turn it is; before it the one that the plan in force has for this attempt. */
    private List<MotorAdded> plannedFirst(
            EntryAdded entry, AttemptNumber number, List<MotorAdded> own, List<MotorAdded> flyable, int turn) {
        List<MotorAdded> order = new ArrayList<>(own);
        Collections.rotate(order, -turn);
        Assignments.plannedMotor(tx, entry, number)
                .flatMap(
                        tag -> flyable.stream().filter(m -> m.tag().equals(tag)).findFirst())
                .ifPresent(planned -> first(order, planned));
        return order;
    }

    private static void first(List<MotorAdded> order, MotorAdded motor) {
        order.remove(motor);
        order.add(0, motor);
    }

    /**
     * With what the attempt of a card is flown.
     *
     * @param how why there is no motor, or what keeps the one that the plan has; empty for nothing
     * @param onCards how often earlier cards of the entry have a motor, by its id
     */
    private record Flown(
            Optional<MotorAdded> motor, Optional<MotorAdded> spare, String how, Map<String, Integer> onCards) {
        /** In the line of the motor. @param named the motor with its use */
        String words(Optional<String> named) {
            return named.map(motor -> how.isEmpty() ? motor : motor + ". " + how)
                    .orElse("none can be flown now: " + how);
        }
    }

    private static Optional<MotorAdded> motor(List<MotorAdded> motors, int i) {
        return motors.isEmpty() ? Optional.empty() : Optional.of(motors.get(i % motors.size()));
    }

    /** The use that its next winding will be: the plan on the card is made for it. */
    private String withUse(MotorAdded motor, Map<String, Integer> onCards) {
        return motor.tag() + ", use " + (uses(motor, onCards) + 1);
    }

    /** When earlier cards are flown as they say. */
    private int uses(MotorAdded motor, Map<String, Integer> onCards) {
        return uses.of(motor.id()) + onCards.getOrDefault(motor.id(), 0);
    }

    private AttemptCard card(EntryAdded entry, AttemptNumber number, Flown flown) {
        Optional<MotorAdded> motor = flown.motor();
        @Nullable
        ModelAdded model =
                ModelStore.ofEntry(tx, entry.id()).stream().findFirst().orElse(null);
        List<Line> lines = new ArrayList<>();
        lines.add(new Line("Model", model == null ? "" : model.name()));
        lines.add(new Line("Motor", flown.words(motor.map(m -> withUse(m, flown.onCards())))));
        lines.add(new Line(
                "Spare", flown.spare().map(m -> withUse(m, flown.onCards())).orElse("")));
        tasks(entry, number, lines);
        WindingPlaces.next(tx, entry).ifPresent(l -> lines.add(new Line(capital(l.label()), l.value())));
        Optional<MotorPlan> plan = motor.map(m -> Apart.made(
                "The winding plan",
                () -> Aims.planAhead(tx, entry, number, m, model, uses(m, flown.onCards())),
                words -> MotorPlan.none("cannot be computed just now")));
        List<Line> marks = new ArrayList<>();
        UnitSystem there = Stations.units(tx, entry, null, units);
        plan.ifPresent(p -> winding(p, there, lines, marks));
        lines.add(new Line("Latest start", latest(entry)));
        HallLines.air(tx, units).forEach(l -> lines.add(new Line(capital(l.label()), l.value())));
        return new AttemptCard(
                entry.id(),
                number.rule(),
                entry.name() + ", " + number.words(),
                event.name(),
                motor.map(MotorAdded::turns)
                        .or(() -> Optional.ofNullable(model).map(ModelAdded::turns))
                        .map(Direction::withArrow)
                        .orElse(""),
                lines,
                marks,
                CardOrder.after(event).stream().map(CardOrder::label).toList(),
                phases(entry, number));
    }

    /** As the strip of phases on every page has them. */
    private List<String> phases(EntryAdded entry, AttemptNumber number) {
        return PhaseStrip.of(LiveAttempt.next(entry.id(), number, null, null, event.dayKind())).steps().stream()
                .map(PhaseStrip.Step::words)
                .toList();
    }

    private static String capital(String label) {
        return Sentence.begin(label);
    }

    private void tasks(EntryAdded entry, AttemptNumber number, List<Line> lines) {
        WhoDoesWhat who = WhoDoesWhat.of(tx, entry, number, nameOf);
        Assignments.TASKS.forEach(task -> lines.add(new Line(Sentence.begin(task), who.named(task))));
    }

    private static void winding(MotorPlan motor, UnitSystem units, List<Line> lines, List<Line> marks) {
        if (motor.plan() == null || motor.request() == null) {
            lines.add(new Line("Winding plan", motor.why()));
            return;
        }
        var plan = motor.plan();
        lines.add(new Line("Start", units.length(plan.fullStretch())));
        lines.add(new Line(
                "Torque limit",
                motor.aim().ceilingTorque() == null
                        ? "the turns limit ends the wind"
                        : motor.aim().ceilingWords(units)));
        lines.add(new Line("Turns limit", plan.targetCrankTurns() + " crank turns"));
        lines.add(new Line(
                "Launch torque", motor.aim().launch() == null ? "" : motor.aim().launchWords(units)));
        lines.add(new Line("Finish", units.length(plan.finish())));
        lines.add(new Line("Back off", motor.request().backOff() + " crank turns"));
        plan.floorMarks()
                .forEach(mark -> marks.add(new Line(String.valueOf(mark.crankTurns()), units.length(mark.distance()))));
    }

    /** As minutes after the window opens: the card stays right when the window moves. One that was open waits with the hall. */
    private String latest(EntryAdded entry) {
        return HallWindows.of(tx, event.id(), entry.id(), nowMs)
                .map(this::minutes)
                .orElse(event.windowMinutes() == 0 ? "any time" : minutes(event.windowMinutes() * 60_000L));
    }

    private String minutes(WindowAdded window) {
        return minutes(window.closesAtMs() - window.opensAtMs());
    }

    private String minutes(long windowMs) {
        long s = Math.max(0, sum.latestWindingMs(windowMs)) / 1000;
        return s / 60 + ":" + String.format("%02d", s % 60) + " after opening";
    }
}
