package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.contest.ModelAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.FlightTime;

/** The flights of a model with motors of one batch: what a forecast for one of them rests on. Reads each model once. */
final class FlightsOf {
    /** Of one further flight. */
    static final double CONFIDENCE = 0.9;

    private final Tx tx;
    private final Map<String, MotorAdded> motors;
    private final boolean quiet;
    private final Map<String, List<Flight>> ofModel = new HashMap<>();

    FlightsOf(Tx tx) {
        this.tx = tx;
        this.motors = MotorStore.all(tx).stream().collect(Collectors.toMap(MotorAdded::id, Function.identity()));
        this.quiet = AttemptStore.quietNow(tx).isPresent();
    }

    /** Timed and valid ones, in the order in which they were flown. */
    List<Flight> valid(ModelAdded model, MotorAdded motor) {
        return ofModel(model).stream()
                .filter(f -> f.timeMs() != null && f.validity().isValid() && isOfBatch(f, motor))
                .toList();
    }

    /**
     * How long a flight with this motor may last; nothing is forecast while it is quiet.
     *
     * @param use which winding of the motor it will be, from 1
     */
    FlightForecast forecast(ModelAdded model, MotorAdded motor, int use) {
        if (quiet) {
            return new FlightForecast.NotKnown("nothing is forecast while it is quiet");
        }
        List<FlightForecast.Flown> flown = new ArrayList<>();
        Map<String, Integer> used = new HashMap<>();
        for (Flight flight : ofModel(model)) {
            MotorAdded with = motors.get(String.valueOf(flight.motorId()));
            Long ms = flight.timeMs();
            if (with != null) {
                int itsUse = with.uses() + used.merge(with.id(), 1, Integer::sum);
                if (ms != null && with.batchId().equals(motor.batchId())) {
                    flown.add(new FlightForecast.Flown(new FlightTime(ms), itsUse, flight.validity()));
                }
            }
        }
        return FlightForecast.of(flown, use, CONFIDENCE);
    }

    private List<Flight> ofModel(ModelAdded model) {
        return ofModel.computeIfAbsent(model.id(), id -> FlownStore.ofModel(tx, id));
    }

    private boolean isOfBatch(Flight flight, MotorAdded motor) {
        MotorAdded with = motors.get(String.valueOf(flight.motorId()));
        return with != null && with.batchId().equals(motor.batchId());
    }
}
