package org.skeinday.attempt.action;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Torque;
import org.skeinday.units.TorqueUnit;
import org.skeinday.units.UnitSystem;

/**
 * A torque of a form with the text that it was typed as.
 *
 * @param nmm N·mm
 * @param typed with its unit; null where the record has no text of it
 */
record TypedTorque(double nmm, @Nullable String typed) {
    /** Of the record; null where it has none. */
    static @Nullable TypedTorque kept(@Nullable Double nmm, @Nullable String typed) {
        return nmm == null ? null : new TypedTorque(nmm, typed);
    }

    /**
     * What a field holds, null for nothing. A form offers the recorded value rounded in the unit that it shows: sent back as
     * it was offered nobody changed it, and the record keeps its own number and text.
     *
     * @param unit that stood under the field
     * @throws IllegalArgumentException with words for a text that is no torque
     */
    static @Nullable TypedTorque read(String text, String unit, @Nullable TypedTorque kept) {
        Torque torque = AimActions.torque(text, unit);
        if (torque == null) {
            return null;
        }
        return kept != null && text.equals(kept.offered(unit))
                ? kept
                : new TypedTorque(torque.newtonMillimetres(), AimActions.withUnit(text, unit));
    }

    private String offered(String unit) {
        return TorqueUnit.ofTyped(unit)
                .map(marked -> UnitSystem.METRIC.with(marked).torque(Torque.ofNewtonMillimetres(nmm)))
                .orElse("");
    }
}
