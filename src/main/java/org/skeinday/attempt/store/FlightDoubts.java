package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_STATION;
import static org.skeinday.platform.db.schema.Tables.MOTOR_BATCH;

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
import org.skeinday.attempt.UsualFlights;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.MeterScale;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/** Holds what was told of flights against what the record knows of motors, meters and the other flights. */
public final class FlightDoubts {
    private final Map<String, MotorAdded> motors;
    private final Map<String, Double> ks;
    private final @Nullable MeterScale scale;

    /** Three queries, of single columns where others are not needed: what cannot be among those takes no page down. */
    public FlightDoubts(Tx tx) {
        motors = MotorStore.all(tx).stream().collect(Collectors.toMap(MotorAdded::id, Function.identity()));
        ks = tx.sql()
                .select(MOTOR_BATCH.ID, MOTOR_BATCH.K_INCH_GRAM)
                .from(MOTOR_BATCH)
                .where(MOTOR_BATCH.K_INCH_GRAM.gt(0.0))
                .fetchMap(MOTOR_BATCH.ID, MOTOR_BATCH.K_INCH_GRAM);
        scale = scale(tx);
    }

    /** The largest where several meters may have been read; none while the scale of one is not known. */
    private static @Nullable MeterScale scale(Tx tx) {
        List<MeterScale> scales = new ArrayList<>();
        for (var station : tx.sql()
                .select(CONTEST_STATION.METER, CONTEST_STATION.FULL_SCALE_NMM, CONTEST_STATION.FULL_SCALE_TYPED)
                .from(CONTEST_STATION)) {
            Double full = station.value2();
            if (full != null) {
                scales.add(new MeterScale(full, String.valueOf(station.value3())));
            } else if (station.value1() != null) {
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
        MotorAdded motor = motors.get(String.valueOf(flight.motorId()));
        if (motor == null || motor.breakingTurns() != null) {
            return motor == null || motor.breakingTurns() == null
                    ? null
                    : (Double) motor.breakingTurns().doubleValue();
        }
        Double k = ks.get(motor.batchId());
        return k == null
                ? null
                : (Double) BreakingTurns.of(k, Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG()));
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
