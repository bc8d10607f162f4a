package org.skeinday.evidence;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is usual of a model: medians of its flights, which one slip of the keys does not move.
 *
 * @param seconds of flight, null below three flights
 * @param turnsPerSecond hook against frame, null below three flights with their turns
 */
public record Usual(@Nullable Double seconds, @Nullable Double turnsPerSecond) {
    /** Fewer say nothing of what is usual (own default). */
    public static final int FEWEST = 3;
    /** So many times more or less is asked about (own default). */
    public static final double TIMES = 10;

    public static final Usual UNKNOWN = new Usual(null, null);

    /** @param seconds and {@code turnsPerSecond}: of the model's flights, in any order */
    public static Usual of(List<Double> seconds, List<Double> turnsPerSecond) {
        return new Usual(median(seconds), median(turnsPerSecond));
    }

    private static @Nullable Double median(List<Double> values) {
        if (values.size() < FEWEST) {
            return null;
        }
        double[] sorted = values.stream().mapToDouble(v -> v).sorted().toArray();
        int middle = sorted.length / 2;
        return Arrays.stream(sorted, sorted.length % 2 == 1 ? middle : middle - 1, middle + 1)
                .average()
                .orElseThrow();
    }

    /** Whether {@code value} is ten times more or less than {@code usual}; never where that is not known. */
    static boolean isFarFrom(@Nullable Double usual, double value) {
        return usual != null && usual > 0 && (value >= TIMES * usual || value * TIMES <= usual);
    }
}
