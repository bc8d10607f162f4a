package org.skeinday.motor;

import java.util.List;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/** What a motor will give at launch, from the batch's unwinding readings only: winding lies far above it. */
public sealed interface LaunchTorque {
    record Forecast(BatchBand.Band band) implements LaunchTorque {}

    record NoForecast(String reason) implements LaunchTorque {}

    /** One motor's unwinding at fixed length, the meter that it was read from, and its size. */
    record Unwound(String meterId, UnwindingCurve curve, Length loop, Mass mass, Resolution read) {
        /** Of torques without a meter: as exact as they stand. */
        public Unwound(String meterId, UnwindingCurve curve, Length loop, Mass mass) {
            this(meterId, curve, loop, mass, Resolution.EXACT);
        }
    }

    /**
     * @param batch all of one meter
     * @param motorTurns in the motor at launch, above zero
     */
    static LaunchTorque of(List<Unwound> batch, double motorTurns, Length loop, Mass mass) {
        if (batch.isEmpty()) {
            return new NoForecast("no unwinding readings of this batch yet: no forecast of the launch torque");
        }
        BatchBand band = BatchBand.of(batch.stream()
                .map(u -> new BatchBand.MotorCurve(u.meterId(), u.curve().curve(), u.loop(), u.mass(), u.read()))
                .toList());
        return band.at(motorTurns, loop, mass)
                .<LaunchTorque>map(Forecast::new)
                .orElseGet(() -> new NoForecast("no unwinding reading of this batch reaches so many turns"));
    }
}
