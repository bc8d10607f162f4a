package org.skeinday.motor;

import org.jspecify.annotations.Nullable;

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
        if (name.isBlank()) {
            throw new IllegalArgumentException("The batch's name must not be empty");
        }
        if (kInchGram != null && !(kInchGram >= 10 && kInchGram <= 100)) {
            throw new IllegalArgumentException("K must be from 10 to 100, but was " + kInchGram);
        }
    }
}
