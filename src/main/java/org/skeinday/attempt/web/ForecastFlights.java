package org.skeinday.attempt.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.contest.ModelAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.FlightTime;

/** The flights of a model with motors of one batch: what a forecast for one of them rests on. Reads all flights once. */
final class ForecastFlights {
    /** Of one further flight. */
    static final double CONFIDENCE = 0.9;

    private final Tx tx;
    private final Map<String, MotorAdded> motors;
    private final Map<String, BatchAdded> batches;
    private final MotorUses uses;
    private @Nullable List<Flight> flights;

    ForecastFlights(Tx tx, MotorUses uses) {
        this.tx = tx;
        this.uses = uses;
        this.motors = MotorStore.all(tx).stream().collect(Collectors.toMap(MotorAdded::id, Function.identity()));
        this.batches = BatchStore.all(tx).stream().collect(Collectors.toMap(BatchAdded::id, Function.identity()));
    }

    /** What counts and is timed, in the order in which it was flown. */
    List<Flight> counted(ModelAdded model, MotorAdded motor) {
        return ofModel(model).stream()
                .flatMap(f -> f.evidence().stream())
                .filter(f -> f.timeMs() != null && isOfBatch(f, motor))
                .toList();
    }

    /**
     * How long a flight with this motor may last.
     *
     * @param use which winding of the motor it will be, from 1
     */
    FlightForecast forecast(ModelAdded model, MotorAdded motor, int use) {
        List<FlightForecast.Flown> flown = new ArrayList<>();
        for (Flight flight : counted(model, motor)) {
            Long ms = Objects.requireNonNull(flight.timeMs());
            int flownOn = uses.number(String.valueOf(flight.motorId()), flight.id());
            flown.add(new FlightForecast.Flown(new FlightTime(ms), flownOn));
        }
        return FlightForecast.of(flown, use, CONFIDENCE);
    }

    /** Of the motor that it was flown with; empty while not known. */
    Optional<Double> breakingTurns(Flight flight) {
        return Optional.ofNullable(motors.get(String.valueOf(flight.motorId())))
                .flatMap(motor -> MotorPlan.breakingTurns(motor, batches.get(motor.batchId())))
                .map(BigDecimal::doubleValue);
    }

    private List<Flight> ofModel(ModelAdded model) {
        return flights().stream().filter(f -> model.id().equals(f.modelId())).toList();
    }

    /** Read when first asked for: a motor without a model needs none. */
    private List<Flight> flights() {
        List<Flight> known = flights;
        if (known == null) {
            known = FlownStore.own(tx);
            flights = known;
        }
        return known;
    }

    private boolean isOfBatch(Flight flight, MotorAdded motor) {
        MotorAdded with = motors.get(String.valueOf(flight.motorId()));
        return with != null && with.batchId().equals(motor.batchId());
    }
}
