package org.skeinday.flight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AirDensityTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "20 C, 1013 hPa|20|1013",
                "20°C,1013hPa|20|1013",
                "20,5 °C; 987,5 mbar|20.5|987.5",
                "-5 c 99.1 kPa|-5|991",
                "68 F, 1013 hPa|20|1013",
                "12 C|12|1013.25",
                "850 HPA|15|850"
            })
    void air_is_read_as_people_type_it(String typed, double celsius, double hectopascals) {
        double expected = AirDensity.of(celsius, hectopascals).kilogramsPerCubicMetre();
        assertEquals(expected, AirDensity.parse(typed).kilogramsPerCubicMetre(), 1e-12);
    }

    @Test
    void the_law_is_that_of_the_perfect_gas() {
        assertEquals(101300 / (287.05 * 293.15), AirDensity.of(20, 1013).kilogramsPerCubicMetre(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "20", "20, 1013", "20 C, 1013 psi", "warm", "20 C 1013 hPa dry", "1013 hPa, 20 C", ","})
    void what_is_no_air_is_refused_with_what_would_be_right(String typed) {
        var refused = assertThrows(IllegalArgumentException.class, () -> AirDensity.parse(typed));
        assertTrue(String.valueOf(refused.getMessage()).contains("for example 20 C, 1013 hPa"), refused.getMessage());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"70 C, 1013 hPa|-20 to 60", "20 C, 1013 kPa|500 to 1100", "20 C, 30 hPa|500 to 1100"})
    void air_that_no_hall_has_is_refused(String typed, String range) {
        var refused = assertThrows(IllegalArgumentException.class, () -> AirDensity.parse(typed));
        assertTrue(String.valueOf(refused.getMessage()).contains(range), refused.getMessage());
    }
}
