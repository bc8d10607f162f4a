package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
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
}
