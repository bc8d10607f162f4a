package org.skeinday.prepare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.DayRows;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

class TypedUnitsTest {
    private static Column column(String file, String name) {
        return DayRows.columns(file).stream()
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "event.csv|ceiling|8.4|8.4 m",
                "event.csv|ceiling|8,4 m|8,4 m",
                "event.csv|ceiling|27 ft|27 ft",
                "event.csv|hall|8.4|8.4",
                "event.csv|to|0.1 sec|0.1",
                "event.csv|window minutes|12 min|12",
                "models.csv|hook distance|241|241 mm",
                "models.csv|hook distance|9 1/2 in|9 1/2 in",
                "models.csv|mass|4,1|4,1 g",
                "motors.csv|loop|18½ in|18½ in",
                "motors.csv|mass|1.62|1.62 g",
                "motors.csv|mass|heavy|heavy",
                "terms.csv|motor limit|1.5|1.5 g",
                "stations.csv|pull test|8 N|8",
                "stations.csv|pull test|8,4 newtons|8,4",
                "stations.csv|pull test|8 kg|8 kg",
                "stations.csv|division|0.05|0.05 in-ozf",
                "flights.csv|launch torque|0.35|0.35 in-ozf",
                "flights.csv|launch torque|2.5 mN·m|2.5 mN·m"
            })
    void a_bare_number_is_in_the_unit_that_stands_under_its_field_and_a_count_may_have_one(
            String file, String column, String typed, String cell) {
        Column asked = column(file, column);
        String under = TypedUnits.under(asked, UnitSystem.METRIC_INCH_OUNCE);
        assertEquals(cell, TypedUnits.cell(asked, typed, under));
    }

    /** Every field of every form of Prepare, in every choice of units: a bare number is taken, and means what it says. */
    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void every_field_of_a_quantity_has_its_unit_and_takes_a_bare_number_in_it(UnitSystem units) {
        List<String> walked = new ArrayList<>();
        for (Sheet sheet : Sheet.values()) {
            for (Column column : DayRows.columns(sheet.file())) {
                String under = TypedUnits.under(column, units);
                String cell = TypedUnits.cell(column, "1.5", under);
                boolean quantity = column.kind() == Column.Kind.LENGTH
                        || column.kind() == Column.Kind.MASS
                        || column.kind() == Column.Kind.TORQUE;
                assertEquals(quantity, !under.isEmpty(), sheet + " " + column.name());
                assertEquals(quantity ? "1.5 " + under : "1.5", cell, sheet + " " + column.name());
                if (quantity) {
                    walked.add(sheet.file() + "/" + column.name());
                    assertTrue(value(column.kind(), cell) > 0, cell);
                    assertEquals(value(column.kind(), cell), value(column.kind(), cell.replace(" ", "")), cell);
                }
            }
        }
        assertTrue(walked.size() >= 18, walked.toString());
        assertTrue(walked.containsAll(List.of("motors.csv/loop", "flights.csv/launch torque", "event.csv/lane")));
    }

    private static double value(Column.Kind kind, String cell) {
        return switch (kind) {
            case LENGTH -> Length.parse(cell).millimetres();
            case MASS -> Mass.parse(cell).grams();
            case TORQUE -> Torque.parse(cell).newtonMillimetres();
            case PLAIN, TIME -> 0;
        };
    }

    @Test
    void the_same_bare_number_is_another_length_once_the_team_has_chosen_inches() {
        Column loop = column("motors.csv", "loop");
        assertEquals("18.5 mm", TypedUnits.cell(loop, "18.5", TypedUnits.under(loop, UnitSystem.METRIC)));
        assertEquals("18.5 in", TypedUnits.cell(loop, "18.5", TypedUnits.under(loop, UnitSystem.INCH)));
        assertFalse(
                TypedUnits.under(column("event.csv", "lane"), UnitSystem.INCH).equals("in"), "a lane is in feet");
    }
}
