package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class BreakRiskPublishedTest {
    @Test
    void the_censored_example_of_the_handbook_gives_its_shape_and_scale() throws IOException {
        List<String[]> rows = RubberTables.rows("weibull-censored.csv"); // NIST/SEMATECH 8.4.1
        double[] hours = RubberTables.column("weibull-censored.csv", 0);
        boolean[] broke = new boolean[rows.size()];
        for (int i = 0; i < broke.length; i++) {
            broke[i] = rows.get(i)[1].equals("yes");
        }
        WeibullFit fit = WeibullFit.of(hours, broke);
        assertEquals(20, hours.length);
        assertEquals(1.7208, fit.shape(), 5e-5);
        assertEquals(606.5280, fit.scale(), 1e-3); // the published value is where an optimiser stopped
        assertTrue(fit.probabilityInterval(500, 0.9).holds(fit.probability(500)));
    }

    /** Of a set in {@code weibull-published.csv}; a plus marks what had not failed yet. */
    private static WeibullFit published(String set) throws IOException {
        String[] values = rowOf(set)[5].split(" ");
        boolean[] broke = new boolean[values.length];
        double[] x = new double[values.length];
        for (int i = 0; i < x.length; i++) {
            broke[i] = !values[i].endsWith("+");
            x[i] = Double.parseDouble(values[i].replace("+", ""));
        }
        return WeibullFit.of(x, broke);
    }

    private static String[] rowOf(String set) throws IOException {
        return RubberTables.rows("weibull-published.csv").stream()
                .filter(row -> row[0].equals(set))
                .findFirst()
                .orElseThrow();
    }

    /** The ten weakest bearings break, the others are taken away at the tenth break. */
    private static WeibullFit firstTen() throws IOException {
        String[] values = rowOf("ball bearings")[5].split(" ");
        boolean[] broke = new boolean[values.length];
        double[] x = new double[values.length];
        for (int i = 0; i < x.length; i++) {
            broke[i] = i < 10;
            x[i] = Double.parseDouble(values[Math.min(i, 9)]);
        }
        return WeibullFit.of(x, broke);
    }

    @Test
    void absorbers_bearings_and_fluid_give_their_published_shape_and_scale() throws IOException {
        List<String[]> rows = RubberTables.rows("weibull-published.csv");
        assertEquals(3, rows.size());
        for (String[] row : rows) {
            WeibullFit fit = published(row[0]);
            assertEquals(Double.parseDouble(row[1]), fit.shape(), Double.parseDouble(row[2]), row[0]);
            assertEquals(Double.parseDouble(row[3]), fit.scale(), Double.parseDouble(row[4]), row[0]);
        }
    }

    @Test
    void intervals_are_those_of_an_independent_fit_and_of_independently_simulated_tests() throws IOException {
        for (String[] row : RubberTables.rows("weibull-intervals.csv")) {
            WeibullFit fit = row[0].equals("first 10") ? firstTen() : published(row[0]);
            double at = Double.parseDouble(row[1]);
            Interval interval = row[2].equals("exact") ? fit.calibratedInterval(at) : fit.probabilityInterval(at, 0.9);
            String which = String.join(" ", row[0], row[1], row[2]);
            assertEquals(Double.parseDouble(row[3]), fit.probability(at), 1e-6, which);
            assertEquals(Double.parseDouble(row[4]), interval.low(), Double.parseDouble(row[6]), which);
            assertEquals(Double.parseDouble(row[5]), interval.high(), Double.parseDouble(row[6]), which);
        }
    }

    @Test
    void the_drawn_tests_have_the_published_percentiles_of_the_fitted_shape() throws IOException {
        for (String[] row : RubberTables.rows("shape-percentiles.csv")) {
            int motors = Integer.parseInt(row[0]);
            double[] shapes = Arrays.stream(DrawnTests.of(motors, motors, 9999))
                    .mapToDouble(WeibullFit::shape)
                    .sorted()
                    .toArray();
            double tolerance = Double.parseDouble(row[3]);
            assertEquals(1, shapes[499] / Double.parseDouble(row[1]), tolerance, "5 % of " + motors);
            assertEquals(1, shapes[9499] / Double.parseDouble(row[2]), tolerance, "95 % of " + motors);
        }
    }
}
