package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aim;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.store.Aims;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.WindingPlan;
import org.skeinday.winding.WindingPolicy;
import org.skeinday.winding.WindingRequest;

/** A motor's winding plan as lines of the Next attempt card. */
final class PlanLines {
    private final List<NowView.Line> lines = new ArrayList<>();
    private final List<NowView.Line> walkIn = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private final UnitSystem units;

    private PlanLines(UnitSystem units) {
        this.units = units;
    }

    /** @param attempt null before the entry is called */
    static NowView.Plan of(
            Tx tx,
            EntryAdded entry,
            @Nullable String attempt,
            MotorAdded motor,
            @Nullable ModelAdded model,
            UnitSystem units) {
        return Apart.made(
                "The winding plan",
                () -> made(tx, entry, attempt, motor, model, units),
                words -> new NowView.Plan(
                        List.of(new NowView.Line("motor", motor.tag()), new NowView.Line("winding plan", words)),
                        List.of(),
                        List.of()));
    }

    private static NowView.Plan made(
            Tx tx,
            EntryAdded entry,
            @Nullable String attempt,
            MotorAdded motor,
            @Nullable ModelAdded model,
            UnitSystem team) {
        Optional<StationAdded> station = Stations.of(tx, entry, attempt);
        UnitSystem units = station.map(place -> place.units(team)).orElse(team);
        var plan = new PlanLines(units);
        MotorPlan winding = Aims.plan(tx, entry, attempt, motor, model);
        plan.motor(motor, model, winding.use());
        plan.crank(station, motor);
        if (winding.plan() == null || winding.request() == null) {
            plan.line("winding plan", winding.why());
        } else {
            plan.add(winding.request(), winding.plan(), winding.aim());
            plan.lines.addAll(
                    new PlanForecast(tx, motor, station.map(StationAdded::meter).orElse(null), units)
                            .lines(model, winding.use(), winding.request(), winding.plan()));
        }
        return new NowView.Plan(List.copyOf(plan.lines), List.copyOf(plan.walkIn), List.copyOf(plan.warnings));
    }

    private void motor(MotorAdded motor, @Nullable ModelAdded model, int use) {
        String size =
                units.length(Length.ofMillimetres(motor.loopMm())) + ", " + units.mass(Mass.ofGrams(motor.massG()));
        line("motor", motor.tag() + ", " + PhaseWords.ordinal(use) + " use");
        line("loop, mass", size);
        line("direction", motor.turns().withArrow() + " from the winder");
        if (model != null && model.turns() != motor.turns()) {
            warnings.add("This motor turns the other way than " + model.name() + ". Wound so, the rotor drives down.");
        }
        WindingPolicy.aboutUse(use).ifPresent(warnings::add);
    }

    /** Where somebody has seen which way the winder's hook turns for its crank. */
    private void crank(Optional<StationAdded> station, MotorAdded motor) {
        station.flatMap(StationAdded::output)
                .ifPresent(output -> line(
                        "crank",
                        output.crankFor(motor.turns()).withArrow() + ": this winder's hook turns " + output.word()
                                + " it"));
    }

    private void add(WindingRequest request, WindingPlan plan, Aim aim) {
        line("start at", units.length(plan.fullStretch()) + " hook to hook");
        line("at full stretch", plan.atFullStretchCrankTurns() + " crank turns, then walk in");
        line("turns limit", plan.targetCrankTurns() + " crank turns");
        line("torque limit", aim.ceilingWords(units));
        line("finish at", units.length(plan.finish()));
        line("back off", request.backOff() + " crank turns at least");
        line("launch torque wanted", aim.launchWords(units));
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
