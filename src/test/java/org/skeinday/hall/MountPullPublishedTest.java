package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.Section;

class MountPullPublishedTest {
    /** Exact by definition of standard gravity: 1 kgf/cm² = 0.0980665 N/mm² (NIST SP 811, B.8). */
    private static final double NEWTON_PER_MM2 = 0.0980665;

    private static double newtons(double section, double stretch) {
        return MountPull.newtons(new Section(section), stretch).orElseThrow();
    }

    /** Treloar's strip is another rubber than ours: within a tenth. */
    @Test
    void five_newtons_at_four_times_for_four_square_millimetres_are_what_a_published_strip_pulls() throws IOException {
        assertEquals(5, newtons(4, 4.0), 1e-12);
        assertEquals(4 * stress(4) * NEWTON_PER_MM2, newtons(4, 4.0), 0.5);
        assertEquals(4 * stress(5) * NEWTON_PER_MM2, newtons(4, 5.0), 0.7);
    }

    @Test
    void at_five_times_it_pulls_more_in_the_published_proportion() throws IOException {
        assertEquals(stress(5) / stress(4), newtons(4, 5.0) / newtons(4, 4.0), 0.005);
        assertTrue(newtons(4, 4.5) > newtons(4, 4.4));
    }

    @Test
    void the_pull_goes_with_the_section() {
        assertEquals(2 * newtons(3, 4.0), newtons(6, 4.0), 1e-12);
    }

    @Test
    void the_mount_is_tested_with_twice_the_pull_in_whole_newtons_up() {
        assertEquals(OptionalDouble.of(10), MountPull.testNewtons(new Section(4), 4.0, MountPull.FACTOR));
        assertEquals(OptionalDouble.of(11), MountPull.testNewtons(new Section(4.01), 4.0, MountPull.FACTOR));
        assertEquals(OptionalDouble.of(15), MountPull.testNewtons(new Section(4), 5.0, MountPull.FACTOR));
        assertEquals(OptionalDouble.of(15), MountPull.testNewtons(new Section(4), 4.0, 3));
        assertThrows(IllegalArgumentException.class, () -> MountPull.testNewtons(new Section(4), 4.0, 0.5));
    }

    @Test
    void nothing_is_said_without_section_or_stretch_or_above_five_times() {
        assertEquals(OptionalDouble.empty(), MountPull.newtons(null, 4.0));
        assertEquals(OptionalDouble.empty(), MountPull.newtons(new Section(4), null));
        assertEquals(OptionalDouble.empty(), MountPull.newtons(new Section(4), 5.01));
        assertEquals(OptionalDouble.empty(), MountPull.testNewtons(null, 4.0, 2));
    }

    /** kgf/cm², straight between the published points. */
    private static double stress(double stretch) throws IOException {
        double[] before = {1, 0};
        for (double[] point : treloar()) {
            if (point[0] >= stretch) {
                return before[1] + (point[1] - before[1]) * (stretch - before[0]) / (point[0] - before[0]);
            }
            before = point;
        }
        throw new IllegalArgumentException("No published stress at " + stretch);
    }

    private static List<double[]> treloar() throws IOException {
        try (InputStream in = MountPull.class.getResourceAsStream("/published/motor/treloar-1944.csv")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> Character.isDigit(line.charAt(0)))
                    .map(line -> line.split(","))
                    .map(c -> new double[] {Double.parseDouble(c[0]), Double.parseDouble(c[1])})
                    .toList();
        }
    }
}
