package org.skeinday.prepare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.DayRows;

class TypedUnitsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "event.csv|ceiling|8.4|8.4", // metres or feet?
                "event.csv|ceiling|8,4 m|8,4 m",
                "event.csv|ceiling|27 ft|27 ft",
                "event.csv|hall|8.4|8.4",
                "event.csv|to|0.1 sec|0.1",
                "event.csv|window minutes|12 min|12",
                "models.csv|hook distance|9 1/2|9 1/2",
                "models.csv|mass|4,1|4,1 g",
                "motors.csv|loop|18½ in|18½ in",
                "motors.csv|mass|1.62|1.62 g",
                "motors.csv|mass|heavy|heavy",
                "terms.csv|motor limit|1.5|1.5 g",
                "stations.csv|pull test|8 N|8",
                "stations.csv|pull test|8,4 newtons|8,4",
                "stations.csv|pull test|8 kg|8 kg",
                "stations.csv|zero|0.1|0.1", // its unit is the meter's
                "flights.csv|launch torque|0.35|0.35"
            })
    void a_bare_mass_is_in_the_unit_of_the_hint_a_length_needs_its_own_and_a_count_may_have_one(
            String file, String column, String typed, String cell) {
        Column asked = DayRows.columns(file).stream()
                .filter(c -> c.name().equals(column))
                .findFirst()
                .orElseThrow();
        assertEquals(cell, TypedUnits.cell(asked, typed));
    }
}
