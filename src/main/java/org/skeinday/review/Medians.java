package org.skeinday.review;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * Middles and their intervals without a bell curve: by sign (nothing supposed), by signed ranks (scattered alike to both
 * sides), and the shift between two groups by ranks (scattered alike in both). Exact for few values, by the normal
 * approximation with correction for continuity for many. Sources: F. Wilcoxon, Biometrics Bulletin 1 (1945); H. B. Mann
 * and D. R. Whitney, Ann. Math. Statist. 18 (1947); J. L. Hodges and E. L. Lehmann, Ann. Math. Statist. 34 (1963)
 * (memory); worked examples beside the tests.
 */
final class Medians {
    /** Above so many pairs of two groups, or values of one, the approximation is good enough (own bounds). */
    private static final int EXACT_PAIRS = 900;

    private static final int EXACT_VALUES = 40;

    private Medians() {}

    /** The median of one group, by the sign test. @param none the median that stands for no effect */
    static Optional<Effect> bySign(double[] values, double confidence, double none) {
        var heads = new BinomialDistribution(values.length, 0.5);
        return values.length == 0
                ? Optional.empty()
                : Ordered.of(values, heads::cumulativeProbability).effect(confidence, none);
    }

    /** The middle of one group of differences, by Wilcoxon's signed ranks: the median of the Walsh averages. */
    static Optional<Effect> bySignedRank(double[] values, double confidence, double none) {
        int n = values.length;
        double[] walsh = new double[n * (n + 1) / 2];
        int at = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                walsh[at++] = (values[i] + values[j]) / 2;
            }
        }
        return n == 0 ? Optional.empty() : Ordered.of(walsh, signedRankTail(n)).effect(confidence, none);
    }

    /** How much the second group lies above the first (Hodges and Lehmann), by the ranks of Mann, Whitney, Wilcoxon. */
    static Optional<Effect> shift(double[] first, double[] second, double confidence) {
        if (first.length == 0 || second.length == 0) {
            return Optional.empty();
        }
        double[] differences = new double[first.length * second.length];
        int at = 0;
        for (double a : first) {
            for (double b : second) {
                differences[at++] = b - a;
            }
        }
        return Ordered.of(differences, rankSumTail(first.length, second.length)).effect(confidence, 0);
    }

    /** Each rank falls to one side with chance one half. */
    static IntToDoubleFunction signedRankTail(int n) {
        int most = n * (n + 1) / 2;
        if (n > EXACT_VALUES) {
            return normalTail(most / 2.0, n * (n + 1.0) * (2 * n + 1) / 24);
        }
        double[] chance = new double[most + 1];
        chance[0] = 1;
        for (int rank = 1; rank <= n; rank++) {
            for (int w = most; w >= 0; w--) {
                chance[w] = (chance[w] + (w >= rank ? chance[w - rank] : 0)) / 2;
            }
        }
        return cumulative(chance);
    }

    /** P(m, n, u) = n/(m+n) · P(m, n − 1, u) + m/(m+n) · P(m − 1, n, u − n): the largest value is of one of the groups. */
    static IntToDoubleFunction rankSumTail(int m, int n) {
        if ((long) m * n > EXACT_PAIRS) {
            return normalTail(m * (double) n / 2, m * (double) n * (m + n + 1) / 12);
        }
        double[][] row = new double[n + 1][m * n + 1];
        for (double[] chance : row) {
            chance[0] = 1; // no value in the first group
        }
        for (int i = 1; i <= m; i++) {
            double[][] next = new double[n + 1][m * n + 1];
            next[0][0] = 1;
            for (int j = 1; j <= n; j++) {
                for (int u = 0; u <= i * j; u++) {
                    double ofFirst = u >= j ? row[j][u - j] : 0;
                    next[j][u] = (j * next[j - 1][u] + i * ofFirst) / (i + j);
                }
            }
            row = next;
        }
        return cumulative(row[n]);
    }

    private static IntToDoubleFunction cumulative(double[] chance) {
        double[] sums = chance.clone();
        Arrays.parallelPrefix(sums, Double::sum);
        return k -> k < 0 ? 0 : Math.min(1, sums[Math.min(k, sums.length - 1)]);
    }

    private static IntToDoubleFunction normalTail(double mean, double variance) {
        var normal = new NormalDistribution(mean, Math.sqrt(variance));
        return k -> k < 0 ? 0 : normal.cumulativeProbability(k + 0.5);
    }
}
