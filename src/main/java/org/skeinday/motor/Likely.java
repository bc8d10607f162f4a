package org.skeinday.motor;

import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;

/** A forecast as values of equal chance, so that what is made of several forecasts can be counted out. */
final class Likely {
    private static final int MOST_POINTS = 1000;

    private Likely() {}

    /** Quantiles of Student's t at the middles of so many equal parts. @param freedom degrees of freedom, 1 or more */
    static List<Double> of(int freedom, double middle, double scale, int points) {
        if (freedom < 1 || points < 1 || points > MOST_POINTS) {
            throw new IllegalArgumentException("A forecast must have 1 degree of freedom and 1 to " + MOST_POINTS
                    + " points, but had " + freedom + " and " + points);
        }
        var t = new TDistribution(freedom);
        return IntStream.range(0, points)
                .mapToObj(i -> middle + scale * t.inverseCumulativeProbability((i + 0.5) / points))
                .toList();
    }
}
