package org.skeinday.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedQuantityTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "18.5in|469.9",
                "18 1/2\"|469.9",
                "18-1/2 in|469.9",
                "18½\"|469.9",
                "18 1/2”|469.9",
                "11/16 in|17.4625",
                "53,3 cm|533",
                "53.3\u00a0cm|533",
                ".5 in|12.7",
                "4'|1219.2",
                "4 feet|1219.2",
                "470 MM|470",
                "1.2 m|1200",
                "0 mm|0"
            })
    void a_length_is_read_as_people_type_it(String typed, double mm) {
        assertEquals(mm, Length.parse(typed).millimetres(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.9 in-oz|0.9",
                "0.9 oz·in|0.9",
                "0,9 in⋅ozf|0.9",
                "6.355396632803436 mN·m|0.9",
                "6.355396632803436 Nmm|0.9"
            })
    void a_torque_is_read_as_people_type_it(String typed, double inozf) {
        assertEquals(inozf, Torque.parse(typed).inchOunces(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"1700 mg|1.7", "1,7 g|1.7", "1.7G|1.7", "1 oz|28.349523125"})
    void a_mass_is_read_as_people_type_it(String typed, double grams) {
        assertEquals(grams, Mass.parse(typed).grams(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "18.5|has no unit",
                "18.5 furlong|unknown unit 'furlong'; known are mm, cm, m, in and ft",
                "5 Mm|unknown unit 'Mm'",
                "18.5 1/2 in|is not a length",
                "181/2in/3|is not a length",
                "1 1/0 in|divides by zero",
                "-3 mm|below zero",
                "abc|is not a length",
                "``|is not a length",
                "1e3 mm|is not a length",
                "1.2.3 mm|is not a length",
                "99999 m|at most 10 km"
            })
    void a_wrong_length_is_told_what_would_be_right(String typed, String said) {
        String message = assertThrows(IllegalArgumentException.class, () -> Length.parse(typed))
                .getMessage();
        assertTrue(message.contains(said), message);
        assertTrue(message.contains("for example") || message.contains("at most"), message);
    }

    @Test
    void the_largest_length_is_still_read() {
        assertEquals(1e7, Length.parse("10000 m").millimetres());
    }

    @Test
    void a_torque_of_mega_is_not_one_of_milli() {
        assertThrows(IllegalArgumentException.class, () -> Torque.parse("6 MN·m"));
        assertEquals(6, Torque.parse("6 MNM").newtonMillimetres());
    }

    @Test
    void a_header_s_unit_holds_where_the_cell_has_none() {
        assertEquals(469.9, Length.parse("18.5", "in").millimetres(), 1e-9);
        assertEquals(18.5, Length.parse("18.5 mm", "in").millimetres(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"1:23.45,83450", "83.45,83450", "'83,45',83450", "0:05,5000", "61.2 s,61200", "0,0", "12:00,720000"})
    void a_time_is_read_as_people_type_it(String typed, long ms) {
        assertEquals(ms, FlightTime.parse(typed).millis());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1:75", "1:60", "1:5", "1:2:3", "", "-1", "1.2345", "abc", "1:05:"})
    void a_wrong_time_is_told_what_would_be_right(String typed) {
        String message = assertThrows(IllegalArgumentException.class, () -> FlightTime.parse(typed))
                .getMessage();
        assertTrue(message.contains("for example 1:"), message);
    }

    @Test
    void each_reader_sees_their_own_units() {
        Length loop = Length.parse("18.5 in");
        assertEquals("470 mm", UnitSystem.METRIC.length(loop));
        assertEquals("18.5 in", UnitSystem.INCH.length(loop));
        assertEquals("9.0 m", UnitSystem.METRIC.room(Length.ofMetres(9)));
        assertEquals("29.5 ft", UnitSystem.INCH.room(Length.ofMetres(9)));
        assertEquals("0.90 in·ozf", UnitSystem.INCH.torque(Torque.ofInchOunces(0.9)));
        assertEquals("6.36 mN·m", UnitSystem.METRIC.torque(Torque.ofInchOunces(0.9)));
    }
}
