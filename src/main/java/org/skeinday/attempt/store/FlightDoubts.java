package org.skeinday.attempt.store;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.UsualFlights;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.StationStore;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.MeterScale;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;

/** Holds what was told of flights against what the record knows of motors, meters and the other flights. */
public final class FlightDoubts {
    private final Map<String, MotorAdded> motors;
    private final Map<String, BatchAdded> batches;
    private final @Nullable MeterScale scale;

    /** Three queries. */
    public FlightDoubts(Tx tx) {
        motors = MotorStore.all(tx).stream().collect(Collectors.toMap(MotorAdded::id, Function.identity()));
        batches = BatchStore.all(tx).stream().collect(Collectors.toMap(BatchAdded::id, Function.identity()));
        scale = scale(StationStore.all(tx));
    }

    /** The largest where several meters may have been read; none while the scale of one is not known. */
    private static @Nullable MeterScale scale(List<StationAdded> stations) {
        List<MeterScale> scales = new ArrayList<>();
        for (StationAdded station : stations) {
            Double full = station.fullScaleNmm();
            if (full != null) {
                scales.add(new MeterScale(full, String.valueOf(station.fullScaleTyped())));
            } else if (station.meter() != null) {
                return null;
            }
        }
        return scales.stream()
                .max(Comparator.comparingDouble(MeterScale::fullNmm))
                .orElse(null);
    }

    /** What is asked about one flight. @param ofModel the flights of its model, itself among them or not */
    public List<Doubted> of(Flight flight, List<Flight> ofModel) {
        return doubts(flight, UsualFlights.of(ofModel));
    }

    private List<Doubted> doubts(Flight flight, UsualFlights usual) {
        return flight.told(scale, breakingTurns(flight), usual.without(flight)).doubts();
    }

    private @Nullable Double breakingTurns(Flight flight) {
        return Optional.ofNullable(motors.get(String.valueOf(flight.motorId())))
                .flatMap(motor -> MotorPlan.breakingTurns(motor, batches.get(motor.batchId())))
                .map(BigDecimal::doubleValue)
                .orElse(null);
    }

    /** The same flights in the same order with their doubts. @param flights every one of each model */
    List<Flight> doubting(List<Flight> flights) {
        Map<String, List<Flight>> byModel =
                flights.stream().collect(Collectors.groupingBy(f -> String.valueOf(f.modelId())));
        Map<String, UsualFlights> usual = new HashMap<>();
        byModel.forEach((model, flown) -> usual.put(model, UsualFlights.of(flown)));
        return flights.stream()
                .map(f -> doubting(
                        f,
                        Optional.ofNullable(usual.get(String.valueOf(f.modelId())))
                                .orElseThrow()))
                .toList();
    }

    private Flight doubting(Flight flight, UsualFlights usual) {
        return flight.with(flight.said().doubting(doubts(flight, usual)));
    }
}
