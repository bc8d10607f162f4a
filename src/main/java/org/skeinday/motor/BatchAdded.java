package org.skeinday.motor;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code batch.added}: strip of one lot.
 *
 * @param kInchGram K of N_b = K · L0^1.5 / m^0.5, L0 in inches and m in grams; null while not known
 * @param openedDay ISO date
 */
public record BatchAdded(
        String id,
        String name,
        @Nullable Double widthMm,
        @Nullable String widthTyped,
        @Nullable Double thicknessMm,
        @Nullable String thicknessTyped,
        @Nullable Double kInchGram,
        @Nullable String openedDay) {
    public BatchAdded {
        Preconditions.filled("The batch's name", name);
        Preconditions.withinIfKnown("K", kInchGram, 10, 100);
    }
}
