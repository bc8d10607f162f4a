package org.skeinday.flight;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

class HoverPublishedTest {
    private static final double POUND_G = 453.59237;
    private static final double FOOT_M = 0.3048;
    private static final double SLUG_KG = 0.45359237 * 9.80665 / 0.3048;
    private static final double HORSEPOWER_W = 550 * 0.3048 * 0.45359237 * 9.80665; // 550 ft·lbf/s

    @Test
    void induced_velocity_and_power_are_those_of_the_published_examples() throws IOException {
        List<String[]> rows = Files.readAllLines(Path.of("src/test/resources/published/flight/hover.csv")).stream()
                .filter(line -> !line.startsWith("#"))
                .skip(1)
                .map(line -> line.split(","))
                .toList();
        assertEquals(3, rows.size());
        for (String[] row : rows) {
            Hover hover = Hover.of(
                    Mass.ofGrams(number(row, 1) * POUND_G),
                    new Rotors(Length.ofFeet(number(row, 2)), (int) number(row, 3), number(row, 5), number(row, 6)),
                    new AirDensity(number(row, 4) * SLUG_KG / Math.pow(FOOT_M, 3)),
                    4);
            double velocity = hover.inducedVelocityMetresPerSecond() / FOOT_M;
            assertEquals(number(row, 7), velocity, number(row, 8), row[0]);
            assertEquals(number(row, 9), hover.powerMilliwatts() / 1000 / HORSEPOWER_W, number(row, 10), row[0]);
        }
    }

    private static double number(String[] row, int column) {
        return Double.parseDouble(row[column]);
    }

    @Test
    void an_interference_of_the_root_of_two_is_both_rotors_working_on_one_disc() {
        // the bound of momentum theory for two rotors in one plane: Leishman, Principles of Helicopter Aerodynamics,
        // 2.15
        Mass whole = Mass.ofGrams(5.74);
        Length across = Length.ofMillimetres(355);
        AirDensity air = AirDensity.standard();
        Hover pair = Hover.of(whole, new Rotors(across, 2, Math.sqrt(2), 0.45), air, 9);
        Hover one = Hover.of(whole, new Rotors(across, 1, 1, 0.45), air, 9);
        assertEquals(one.powerMilliwatts(), pair.powerMilliwatts(), 1e-9);
    }

    @Test
    void air_has_the_density_of_the_standard_atmosphere_and_of_tables() {
        assertEquals(1.225, AirDensity.standard().kilogramsPerCubicMetre(), 5e-5); // ISO 2533
        assertEquals(1.2041, AirDensity.of(20, 1013.25).kilogramsPerCubicMetre(), 5e-5); // dry air, tables
        assertEquals(1.1117, AirDensity.of(8.501, 898.746).kilogramsPerCubicMetre(), 1e-4); // ISO 2533 at 1000 m
    }
}
