package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.contest.ModelAdded;
import org.skeinday.motor.BreakRisk;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.Interval;
import org.skeinday.motor.LaunchTorque;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.BatchWinds;
import org.skeinday.winding.WindingPlan;
import org.skeinday.winding.WindingRequest;
import org.skeinday.winding.store.BreakEvidenceStore;
import org.skeinday.winding.store.WindStore;

/** What a winding plan is expected to bring, as far as the record can tell: time, torque at launch, risk of breaking. */
final class PlanForecast {
    private final Tx tx;
    private final MotorAdded motor;
    private final @Nullable String meter;
    private final UnitSystem units;

    /** @param meter on which its torque is read, null where none is */
    PlanForecast(Tx tx, MotorAdded motor, @Nullable String meter, UnitSystem units) {
        this.tx = tx;
        this.motor = motor;
        this.meter = meter;
        this.units = units;
    }

    /** Nothing while it is quiet. @param use which winding of the motor it will be, from 1 */
    List<NowView.Line> lines(@Nullable ModelAdded model, int use, WindingRequest request, WindingPlan plan) {
        List<NowView.Line> lines = new ArrayList<>();
        if (AttemptStore.quietNow(tx).isPresent()) {
            return lines;
        }
        if (model != null) {
            lines.add(new NowView.Line(
                    "expected time",
                    Apart.made(
                            "The expected time",
                            () -> time(new ForecastFlights(tx, MotorUseStore.all(tx)).forecast(model, motor, use)),
                            words -> words)));
        }
        Apart.made("Torque at launch", () -> atLaunch(plan), Optional::of)
                .ifPresent(words -> lines.add(new NowView.Line("torque to be expected at launch", words)));
        lines.add(new NowView.Line(
                "risk of breaking", Apart.made("The risk of breaking", () -> risk(request, plan), words -> words)));
        return lines;
    }

    private Optional<String> atLaunch(WindingPlan plan) {
        return launch(plan.launchMotorTurns().doubleValue()) instanceof LaunchTorque.Forecast forecast
                ? Optional.of(units.torque(forecast.band().median()) + " ("
                        + units.torque(forecast.band().low()) + " to "
                        + units.torque(forecast.band().high()) + ")")
                : Optional.empty();
    }

    static String time(FlightForecast forecast) {
        if (forecast instanceof FlightForecast.Expected expected) {
            Interval interval = expected.interval();
            return seconds(expected.seconds()) + ", nine of ten from " + seconds(interval.low()) + " to "
                    + seconds(interval.high()) + " (" + expected.flights() + " " + expected.basis() + ")";
        }
        return "not known: " + ((FlightForecast.NotKnown) forecast).reason();
    }

    private static String seconds(double seconds) {
        return new FlightTime(Math.round(seconds) * 1000).text(0);
    }

    private LaunchTorque launch(double motorTurns) {
        Map<String, BatchWinds.Size> sizes = MotorStore.all(tx).stream()
                .filter(m -> m.batchId().equals(motor.batchId()))
                .collect(Collectors.toMap(MotorAdded::id, BatchWinds.Size::of));
        return BatchWinds.of(WindStore.evidenceOfBatch(tx, motor.batchId()), sizes, meter)
                .launch(BatchWinds.Size.of(motor), motorTurns);
    }

    /** At the turns where winding stops, before the back-off: there it breaks, if it does. */
    private String risk(WindingRequest request, WindingPlan plan) {
        double turns = plan.targetCrankTurns() * request.ratio().doubleValue();
        BreakRisk risk = BreakEvidenceStore.evidence(tx, motor.batchId())
                .at(BreakingTurns.k(turns, Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG())));
        if (risk instanceof BreakRisk.Estimated known) {
            return percent(known.probability()) + " at the turns limit ("
                    + percent(known.interval().low()) + " to "
                    + percent(known.interval().high()) + "; " + known.basis().breaks() + " of "
                    + known.basis().motors() + " motors broke)";
        }
        return "not known: " + ((BreakRisk.NotKnown) risk).reason();
    }

    static String percent(double share) {
        if (share > 0 && share < 0.001) {
            return "less than 0.1 %";
        }
        return String.format(Locale.ROOT, share < 0.1 ? "%.1f %%" : "%.0f %%", 100 * share);
    }
}
