package org.skeinday.winding.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_STATION;
import static org.skeinday.platform.db.schema.Tables.MOTOR_BATCH;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.MeterScale;
import org.skeinday.evidence.Unlikely;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/** What the record knows of where motors break and meters end, to hold against what people tell. */
public final class KnownBounds {
    private final Map<String, MotorAdded> motors;
    private final Map<String, Double> ks;

    /** By meter, empty while where it ends is not known. */
    private final Map<String, Optional<MeterScale>> scales;

    /** Three queries, of single columns where others are not needed: what cannot be among those takes no page down. */
    public KnownBounds(Tx tx) {
        motors = MotorStore.all(tx).stream().collect(Collectors.toMap(MotorAdded::id, Function.identity()));
        ks = tx.sql()
                .select(MOTOR_BATCH.ID, MOTOR_BATCH.K_INCH_GRAM)
                .from(MOTOR_BATCH)
                .where(MOTOR_BATCH.K_INCH_GRAM.gt(0.0))
                .fetchMap(MOTOR_BATCH.ID, MOTOR_BATCH.K_INCH_GRAM);
        scales = scales(tx);
    }

    /** Where nobody knows which meter was read: the largest, null while the scale of one is not known. */
    public @Nullable MeterScale scale() {
        return largest(scales.values()).orElse(null);
    }

    /** Of the meter that was read. @param meter null while nobody knows which, then as {@link #scale()} */
    public @Nullable MeterScale scale(@Nullable String meter) {
        return meter == null
                ? scale()
                : scales.getOrDefault(meter, Optional.empty()).orElse(null);
    }

    /** Motor turns at which this motor breaks, by its own word, else by its batch's K; null while neither is known. */
    public @Nullable Double breakingTurns(@Nullable String motorId) {
        MotorAdded motor = motors.get(String.valueOf(motorId));
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

    /** So many motor turns are asked about on some motor, more on others; null while no motor's breaking turns are known. */
    @Nullable
    Double leastTurnsAsked() {
        return motors.keySet().stream()
                .flatMap(motor -> Optional.ofNullable(breakingTurns(motor)).stream())
                .min(Double::compare)
                .map(turns -> Unlikely.TIMES_BREAKING * turns)
                .orElse(null);
    }

    private static Map<String, Optional<MeterScale>> scales(Tx tx) {
        Map<String, Optional<MeterScale>> scales = new TreeMap<>();
        for (var station : tx.sql()
                .select(CONTEST_STATION.METER, CONTEST_STATION.FULL_SCALE_NMM, CONTEST_STATION.FULL_SCALE_TYPED)
                .from(CONTEST_STATION)) {
            Double full = station.value2();
            String meter = station.value1();
            if (full != null || meter != null) {
                scales.merge(
                        String.valueOf(meter),
                        Optional.ofNullable(full).map(nmm -> new MeterScale(nmm, String.valueOf(station.value3()))),
                        (one, other) -> largest(List.of(one, other)));
            }
        }
        return scales;
    }

    /** Empty where one of them is not known. */
    private static Optional<MeterScale> largest(Collection<Optional<MeterScale>> scales) {
        return scales.stream().anyMatch(Optional::isEmpty)
                ? Optional.empty()
                : scales.stream().flatMap(Optional::stream).max(Comparator.comparingDouble(MeterScale::fullNmm));
    }
}
