package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.skeinday.motor.RiskCoverage.Design;

/** {@code -Dskeinday.coverage} tests a cell; all cells from 2,000 on, as in profile bench, else a few of each design. */
class RiskCoverageTest {
    private static final int TESTS = Integer.getInteger("skeinday.coverage", 300);
    private static final boolean ALL = TESTS >= 2000;
    private static final int[] MOTORS = ALL ? new int[] {5, 6, 8, 10, 15} : new int[] {5, 15};
    private static final double[] RISKS = ALL ? new double[] {0.02, 0.10, 0.30} : new double[] {0.05};

    /** What chance may add to a share of 0.05 or 0.10: four standard errors. */
    private static double chance(double share) {
        return 4 * Math.sqrt(share * (1 - share) / TESTS);
    }

    private static void assertWithin(double share, double least, double most, double of, RiskCoverage cell) {
        assertTrue(share > least - chance(of) && share < most + chance(of), cell::toString);
    }

    @ParameterizedTest
    @EnumSource(Design.class)
    void the_interval_holds_the_true_risk_in_87_to_93_of_100_tests_each_end_missed_by_3_to_7(Design design) {
        for (int motors : MOTORS) {
            for (double risk : RISKS) {
                RiskCoverage cell = RiskCoverage.count(design, motors, risk, TESTS, 1000 + motors);
                System.out.println(cell);
                assertWithin(cell.covered(), 0.87, 0.93, 0.10, cell);
                assertWithin(cell.tailBelow(), 0.03, 0.07, 0.05, cell);
                assertWithin(cell.tailAbove(), 0.03, 0.07, 0.05, cell);
            }
        }
    }
}
