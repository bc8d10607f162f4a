package org.skeinday.attempt.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.WindingPlan;
import org.skeinday.winding.WindingPolicy;
import org.skeinday.winding.WindingRequest;

/** A motor's winding plan as lines of the Next attempt card. */
final class PlanLines {
    /** Rings and fingers between the hooks at the end of winding (common practice). */
    private static final double FINISH_EXCESS_MM = 25;

    private final List<NowView.Line> lines = new ArrayList<>();
    private final List<NowView.Line> walkIn = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private final UnitSystem units;

    private PlanLines(UnitSystem units) {
        this.units = units;
    }

    static NowView.Plan of(Tx tx, EventAdded event, MotorAdded motor, @Nullable ModelAdded model, UnitSystem units) {
        var plan = new PlanLines(units);
        int use = motor.uses() + AttemptStore.windingsOf(tx, motor.id()) + 1;
        plan.motor(motor, model, use);
        Optional<BigDecimal> breaking = breakingTurns(tx, motor);
        if (breaking.isEmpty()) {
            plan.line("winding plan", "not known: the batch has no K and the motor no breaking turns");
        } else {
            plan.add(event, motor, model, use, breaking.get());
        }
        return new NowView.Plan(List.copyOf(plan.lines), List.copyOf(plan.walkIn), List.copyOf(plan.warnings));
    }

    private void motor(MotorAdded motor, @Nullable ModelAdded model, int use) {
        String size =
                units.length(Length.ofMillimetres(motor.loopMm())) + ", " + units.mass(Mass.ofGrams(motor.massG()));
        line("motor", motor.tag() + ", " + Words.ordinal(use) + " use");
        line("loop, mass", size);
        line(
                "turns",
                motor.direction().equals("cw") ? "↻ clockwise from the winder" : "↺ anticlockwise from the winder");
        if (model != null && !model.direction().equals(motor.direction())) {
            warnings.add("This motor turns the other way than " + model.name() + ". Wound so, the rotor drives down.");
        }
        WindingPolicy.aboutUse(use).ifPresent(warnings::add);
    }

    private static Optional<BigDecimal> breakingTurns(Tx tx, MotorAdded motor) {
        if (motor.breakingTurns() != null) {
            return Optional.of(BigDecimal.valueOf(motor.breakingTurns()));
        }
        return BatchStore.find(tx, motor.batchId()).flatMap(batch -> byK(motor, batch.kInchGram()));
    }

    private static Optional<BigDecimal> byK(MotorAdded motor, @Nullable Double k) {
        return k == null
                ? Optional.empty()
                : Optional.of(BigDecimal.valueOf(
                        BreakingTurns.of(k, Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG()))));
    }

    private static WindingRequest request(
            EventAdded event, MotorAdded motor, @Nullable ModelAdded model, int use, BigDecimal breaking) {
        double finish = (model == null ? motor.loopMm() * 0.55 : model.hookDistanceMm()) + FINISH_EXCESS_MM;
        return new WindingRequest(
                Length.ofMillimetres(motor.loopMm()),
                breaking,
                BigDecimal.valueOf(event.winderRatio()),
                WindingPolicy.fraction(use),
                WindingPolicy.stretch(use),
                WindingPolicy.SHARE_AT_FULL_STRETCH,
                Length.ofMillimetres(finish),
                WindingPolicy.BACK_OFF_PRACTISED,
                event.laneMm() == null ? null : Length.ofMillimetres(event.laneMm()));
    }

    private void add(EventAdded event, MotorAdded motor, @Nullable ModelAdded model, int use, BigDecimal breaking) {
        WindingRequest request;
        WindingPlan plan;
        try {
            request = request(event, motor, model, use, breaking);
            plan = WindingPlan.compute(request);
        } catch (IllegalArgumentException e) {
            line("winding plan", "not possible: " + e.getMessage());
            return;
        }
        line("start at", units.length(plan.fullStretch()) + " hook to hook");
        line("at full stretch", plan.atFullStretchCrankTurns() + " crank turns, then walk in");
        line("stop at", plan.targetCrankTurns() + " crank turns");
        line("ceiling", "not known: stop at the count");
        line("finish at", units.length(plan.finish()));
        line("back off", request.backOff() + " crank turns at least");
        line("launch with", plan.launchMotorTurns().stripTrailingZeros().toPlainString() + " motor turns");
        plan.walkIn()
                .forEach(step ->
                        walkIn.add(new NowView.Line(String.valueOf(step.crankTurns()), units.length(step.distance()))));
        warnings.addAll(plan.warnings());
    }

    private void line(String label, String value) {
        lines.add(new NowView.Line(label, value));
    }
}
