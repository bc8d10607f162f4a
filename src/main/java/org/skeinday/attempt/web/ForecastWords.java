package org.skeinday.attempt.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.record.ActStore;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.store.WindStore;

/**
 * What pages show of a model and a batch, to be said beside a correction of what it rests on; nothing while it is quiet. The
 * one place that compares what stood before with what stands then.
 *
 * @param lines each figure by what it is of, in words that begin a sentence
 */
public record ForecastWords(Map<String, String> lines) {
    /** On no use in particular: a correction changes what all uses rest on. */
    private static final int ANY_USE = 0;
    /** More sentences nobody reads beside a form. */
    private static final int MOST_SAID = 4;

    private static final ForecastWords NONE = new ForecastWords(Map.of());

    /** Of the model and the batch of one flight. @param flight id of an attempt or practice flight */
    public static ForecastWords of(ActStore record, String flight) {
        return made(record, tx -> {
            Optional<Flight> flown = FlownStore.any(tx, flight);
            return of(
                    tx,
                    flown.flatMap(f -> ModelStore.find(tx, String.valueOf(f.modelId()))),
                    flown.flatMap(f -> MotorStore.find(tx, String.valueOf(f.motorId()))));
        });
    }

    /** @param model id @param motor id; either may be of nothing */
    public static ForecastWords of(ActStore record, String model, String motor) {
        return made(record, tx -> of(tx, ModelStore.find(tx, model), MotorStore.find(tx, motor)));
    }

    /** Of the batch of one motor, with the forecasts of all models for it. @param motor id, may be of nothing */
    public static ForecastWords ofMotor(ActStore record, String motor, UnitSystem units) {
        return made(record, tx -> ofMotor(tx, motor, units));
    }

    /** The same of the motor of a wind. @param wind id, may be of nothing */
    public static ForecastWords ofWind(ActStore record, String wind, UnitSystem units) {
        return made(
                record,
                tx -> WindStore.find(tx, wind)
                        .map(found -> ofMotor(tx, found.begun().motorId(), units))
                        .orElse(NONE));
    }

    /** The same of one batch. @param batch id, may be of nothing */
    public static ForecastWords ofBatch(ActStore record, String batch, UnitSystem units) {
        return made(record, tx -> of(tx, BatchStore.find(tx, batch).stream().toList(), units));
    }

    /** The same of all batches. */
    public static ForecastWords ofAll(ActStore record, UnitSystem units) {
        return made(record, tx -> of(tx, BatchStore.all(tx), units));
    }

    private static ForecastWords made(ActStore record, Function<Tx, ForecastWords> of) {
        return Apart.made(
                "The forecast",
                () -> record.read(tx -> AttemptStore.quietNow(tx).isPresent() ? NONE : of.apply(tx)),
                words -> NONE);
    }

    private static ForecastWords ofMotor(Tx tx, String motor, UnitSystem units) {
        return of(
                tx,
                MotorStore.find(tx, motor).flatMap(found -> BatchStore.find(tx, found.batchId())).stream()
                        .toList(),
                units);
    }

    private static ForecastWords of(Tx tx, Optional<ModelAdded> model, Optional<MotorAdded> motor) {
        if (model.isEmpty() || motor.isEmpty()) {
            return NONE;
        }
        String batch =
                BatchStore.find(tx, motor.get().batchId()).map(BatchAdded::name).orElse("");
        var flights = new ForecastFlights(tx, MotorUseStore.all(tx));
        return new ForecastWords(Map.of(about(model.get(), batch), forecast(flights, model.get(), motor.get())));
    }

    private static ForecastWords of(Tx tx, List<BatchAdded> batches, UnitSystem units) {
        Map<String, String> lines = new LinkedHashMap<>();
        var flights = new ForecastFlights(tx, MotorUseStore.all(tx));
        List<ModelAdded> models = ModelStore.all(tx);
        List<MotorAdded> motors = MotorStore.all(tx);
        for (BatchAdded batch : batches) {
            motors.stream()
                    .filter(motor -> motor.batchId().equals(batch.id()))
                    .findFirst()
                    .ifPresent(motor -> models.forEach(
                            model -> lines.put(about(model, batch.name()), forecast(flights, model, motor))));
            lines.putAll(BatchFigures.of(tx, batch, units));
        }
        return new ForecastWords(lines);
    }

    private static String about(ModelAdded model, String batch) {
        return "The forecast for " + model.name() + " with " + batch;
    }

    private static String forecast(ForecastFlights flights, ModelAdded model, MotorAdded motor) {
        return PlanForecast.time(flights.forecast(model, motor, ANY_USE));
    }

    /** What a correction did to it, a sentence for each figure that moved; empty when it did nothing. */
    public String changed(ForecastWords now) {
        List<String> said = lines.entrySet().stream()
                .filter(line ->
                        now.lines.containsKey(line.getKey()) && !line.getValue().equals(now.lines.get(line.getKey())))
                .map(line -> line.getKey() + " changed from " + line.getValue() + ", to " + now.lines.get(line.getKey())
                        + ".")
                .toList();
        int more = said.size() - MOST_SAID;
        return String.join(" ", said.subList(0, Math.min(MOST_SAID, said.size())))
                + (more > 0 ? " " + more + (more == 1 ? " more figure" : " more figures") + " changed." : "");
    }
}
