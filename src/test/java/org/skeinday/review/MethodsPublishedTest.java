package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.inference.MannWhitneyUTest;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

class MethodsPublishedTest {
    private static CommonSlope one(String file) throws IOException {
        var group = new CommonSlope.Group(ReviewTables.column(file, 0), ReviewTables.column(file, 1));
        return CommonSlope.through(List.of(group)).orElseThrow();
    }

    @Test
    void of_one_group_the_common_slope_is_the_certified_line_of_norris() throws IOException {
        CommonSlope line = one("motor/norris.csv"); // NIST StRD, certified values
        assertEquals(1.00211681802045, line.slope(), 1e-12);
        assertEquals(0.429796848199937e-3, line.error(), 1e-13);
        assertEquals(34, line.freedom());
    }

    @Test
    void moore_and_mccabe_give_the_half_width_of_the_slope() throws IOException {
        CommonSlope line = one("motor/moore-mccabe-10-3.csv"); // exercise 10.3
        Effect slope = line.effect(0.95);
        assertEquals(0.011448491, line.error(), 1e-9);
        assertEquals(
                0.0270713794287, (slope.interval().high() - slope.interval().low()) / 2, 1e-9);
        // at the confidence that the chance leaves over, the interval's end stands at no effect
        assertEquals(0, line.effect(1 - slope.chance()).interval().low(), 1e-9);
    }

    @Test
    void of_several_groups_it_is_the_slope_beside_one_constant_for_each_by_another_routine() {
        double[][] rows = {{1, 0, 1}, {2, 0, 1}, {4, 0, 1}, {7, 1, 0}, {8, 1, 0}, {9.5, 1, 0}, {12, 0, 0}, {13, 0, 0}};
        double[] times = {100, 104, 109, 80, 81, 86, 60, 61};
        var reference = new OLSMultipleLinearRegression();
        reference.newSampleData(times, rows);
        CommonSlope mine = CommonSlope.through(
                        List.of(group(rows, times, 0, 3), group(rows, times, 3, 6), group(rows, times, 6, 8)))
                .orElseThrow();
        double slope = reference.estimateRegressionParameters()[1];
        double error = reference.estimateRegressionParametersStandardErrors()[1];
        assertEquals(slope, mine.slope(), 1e-9);
        assertEquals(error, mine.error(), 1e-9);
        assertEquals(
                2 * new TDistribution(4).cumulativeProbability(-slope / error),
                mine.effect(0.9).chance(),
                1e-9);
    }

    private static CommonSlope.Group group(double[][] rows, double[] times, int from, int to) {
        double[] x = IntStream.range(from, to).mapToDouble(i -> rows[i][0]).toArray();
        return new CommonSlope.Group(x, Arrays.copyOfRange(times, from, to));
    }

    @Test
    void the_median_has_the_intervals_of_the_published_table() throws IOException {
        for (String[] row : ReviewTables.rows("review/median-ranks.csv")) {
            int n = Integer.parseInt(row[0]);
            int k = Integer.parseInt(row[1]);
            double percent = Double.parseDouble(row[2]);
            double[] values = IntStream.rangeClosed(1, n).mapToDouble(i -> i).toArray();
            Effect said = Medians.bySign(values, percent / 100 - 0.0006, 0).orElseThrow();
            assertEquals(k, said.interval().low(), row[0] + " values");
            assertEquals(n + 1 - k, said.interval().high(), row[0] + " values");
            assertTrue(
                    Medians.bySign(values, percent / 100 + 0.0006, 0)
                            .map(wider -> wider.interval().low() < k)
                            .orElse(true),
                    row[0] + " values: at more than " + percent + " % it must be wider");
        }
    }

    @Test
    void signed_ranks_give_the_published_middles_intervals_and_chances() throws IOException {
        for (String[] row : ReviewTables.rows("review/signed-rank.csv")) {
            double[] values = ReviewTables.numbers(row[0]);
            Effect said = Medians.bySignedRank(values, Double.parseDouble(row[3]), Double.parseDouble(row[1]))
                    .orElseThrow();
            assertEquals(Double.parseDouble(row[2]), said.chance(), Double.parseDouble(row[7]), row[0]);
            assertEquals(Double.parseDouble(row[4]), said.value(), 1e-9, row[0]);
            assertEquals(Double.parseDouble(row[5]), said.interval().low(), 1e-9, row[0]);
            assertEquals(Double.parseDouble(row[6]), said.interval().high(), 1e-9, row[0]);
        }
    }

    @Test
    void the_shift_between_two_groups_has_the_published_intervals_and_chances() throws IOException {
        for (String[] row : ReviewTables.rows("review/shift.csv")) {
            Effect said = Medians.shift(
                            ReviewTables.numbers(row[0]), ReviewTables.numbers(row[1]), Double.parseDouble(row[2]))
                    .orElseThrow();
            if (!row[3].isEmpty()) {
                assertEquals(Double.parseDouble(row[3]), said.interval().low(), 1e-9);
                assertEquals(Double.parseDouble(row[4]), said.interval().high(), 1e-9);
            }
            if (!row[5].isEmpty()) {
                assertEquals(Double.parseDouble(row[5]), said.chance(), 1e-4);
            }
        }
    }

    @Test
    void chances_of_the_shift_agree_with_another_routine_exact_and_approximated() {
        double[] first = IntStream.range(0, 12).mapToDouble(i -> i * 1.37 % 5).toArray();
        double[] second =
                IntStream.range(0, 9).mapToDouble(i -> 1.1 + i * 1.73 % 5).toArray();
        var reference = new MannWhitneyUTest();
        assertEquals(
                reference.mannWhitneyUTest(first, second, true),
                Medians.shift(first, second, 0.9).orElseThrow().chance(),
                1e-9);
        double[] many = IntStream.range(0, 90).mapToDouble(i -> i * 1.37 % 5).toArray();
        double[] more =
                IntStream.range(0, 70).mapToDouble(i -> 0.4 + i * 1.7301 % 5).toArray();
        assertEquals(
                reference.mannWhitneyUTest(many, more, false),
                Medians.shift(many, more, 0.9).orElseThrow().chance(),
                2e-3);
    }

    @Test
    void where_the_exact_tail_gives_way_to_the_approximation_they_agree() {
        assertEquals(
                Medians.rankSumTail(30, 30).applyAsDouble(340),
                Medians.rankSumTail(30, 31).applyAsDouble(353),
                4e-3);
        assertEquals(
                Medians.signedRankTail(40).applyAsDouble(288),
                Medians.signedRankTail(41).applyAsDouble(304),
                3e-3);
    }

    @Test
    void holm_adjusts_as_published() throws IOException {
        for (String[] row : ReviewTables.rows("review/holm.csv")) {
            assertArrayEquals(
                    ReviewTables.numbers(row[1]),
                    Holm.adjusted(ReviewTables.numbers(row[0])),
                    Double.parseDouble(row[2]),
                    row[0]);
        }
    }
}
