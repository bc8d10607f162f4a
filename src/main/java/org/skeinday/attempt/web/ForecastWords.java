package org.skeinday.attempt.web;

import java.util.Optional;
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

/**
 * What is forecast for the model and the batch of one flight, to be said beside a correction of it; nothing while it is quiet.
 *
 * @param about model and batch, empty where the flight has none
 * @param words the forecast, or what it lacks
 */
public record ForecastWords(String about, String words) {
    /** On no use in particular: a correction changes what all uses rest on. */
    private static final int ANY_USE = 0;

    private static final ForecastWords NONE = new ForecastWords("", "");

    /** @param flight id of an attempt or practice flight */
    public static ForecastWords of(ActStore record, String flight) {
        return Apart.made("The forecast", () -> record.read(tx -> of(tx, flight)), words -> NONE);
    }

    /** @param model id @param motor id; either may be of nothing */
    public static ForecastWords of(ActStore record, String model, String motor) {
        return Apart.made(
                "The forecast",
                () -> record.read(tx -> of(tx, ModelStore.find(tx, model), MotorStore.find(tx, motor))),
                words -> NONE);
    }

    private static ForecastWords of(Tx tx, String flight) {
        Optional<Flight> flown = FlownStore.any(tx, flight);
        return of(
                tx,
                flown.flatMap(f -> ModelStore.find(tx, String.valueOf(f.modelId()))),
                flown.flatMap(f -> MotorStore.find(tx, String.valueOf(f.motorId()))));
    }

    private static ForecastWords of(Tx tx, Optional<ModelAdded> model, Optional<MotorAdded> motor) {
        if (model.isEmpty() || motor.isEmpty() || AttemptStore.quietNow(tx).isPresent()) {
            return NONE;
        }
        String batch =
                BatchStore.find(tx, motor.get().batchId()).map(BatchAdded::name).orElse("");
        return new ForecastWords(
                model.get().name() + " with " + batch,
                PlanForecast.time(
                        new ForecastFlights(tx, MotorUseStore.all(tx)).forecast(model.get(), motor.get(), ANY_USE)));
    }

    /** What a correction did to it, one sentence; empty when it did nothing. */
    public String changed(ForecastWords now) {
        return about.equals(now.about) && !words.equals(now.words)
                ? "The forecast for " + about + " changed from " + words + ", to " + now.words + "."
                : "";
    }
}
