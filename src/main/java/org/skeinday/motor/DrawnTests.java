package org.skeinday.motor;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Break tests drawn from a Weibull of shape and scale 1, each ended by its last break, and fitted. Drawn under a fixed
 * seed: the same number of motors and breaks is the same draws.
 */
final class DrawnTests {
    private static final long SEED = 19;

    private DrawnTests() {}

    /**
     * @param breaks 2 to {@code motors}
     * @param draws one fewer than a number of which 5 % are whole
     */
    static WeibullFit[] of(int motors, int breaks, int draws) {
        SplittableRandom random = new SplittableRandom(SEED);
        WeibullFit[] fits = new WeibullFit[draws];
        boolean[] broke = new boolean[motors];
        Arrays.fill(broke, 0, breaks, true);
        for (int draw = 0; draw < draws; draw++) {
            double[] x = new double[motors];
            double hazard = 0;
            for (int i = 0; i < breaks; i++) { // from one break to the next: exponential over those still whole
                hazard -= Math.log(1 - random.nextDouble()) / (motors - i);
                x[i] = hazard;
            }
            Arrays.fill(x, breaks, motors, hazard);
            fits[draw] = WeibullFit.of(x, broke);
        }
        return fits;
    }
}
