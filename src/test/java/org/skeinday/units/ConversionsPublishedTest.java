package org.skeinday.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

class ConversionsPublishedTest {
    @ParameterizedTest
    @CsvFileSource(resources = "/published/units/conversions.csv", numLinesToSkip = 1)
    void a_unit_is_what_the_handbook_says(String typed, double expected, String unit, double tolerance) {
        double value = switch (unit) {
            case "mm" -> org.skeinday.units.Length.parse(typed).millimetres();
            case "g" -> org.skeinday.units.Mass.parse(typed).grams();
            default -> Torque.parse(typed).newtonMillimetres();
        };
        assertEquals(expected, value, tolerance);
    }

    /** Reference library: tech.units:indriya with systems.uom:systems-common. */
    @ParameterizedTest
    @CsvSource({"18.5", "0.0417", "110"})
    void lengths_agree_with_the_reference_library(double value) {
        Unit<Length> mm = javax.measure.MetricPrefix.MILLI(Units.METRE);
        double inch = USCustomary.INCH.getConverterTo(mm).convert(value);
        double foot = USCustomary.FOOT.getConverterTo(mm).convert(value);
        assertEquals(inch, org.skeinday.units.Length.ofInches(value).millimetres(), 1e-12 * inch);
        assertEquals(foot, org.skeinday.units.Length.ofFeet(value).millimetres(), 1e-12 * foot);
    }

    @Test
    void the_ounce_agrees_with_the_reference_library() {
        Unit<Mass> gram = Units.GRAM;
        double ounce = USCustomary.OUNCE.getConverterTo(gram).convert(0.06);
        assertEquals(ounce, org.skeinday.units.Mass.ofOunces(0.06).grams(), 1e-12);
    }

    /** The library has no ounce-force: a pound-force is its pound under standard gravity. */
    @Test
    void the_inch_ounce_agrees_with_the_reference_library() {
        double kilogram = USCustomary.POUND.getConverterTo(Units.KILOGRAM).convert(1) / 16;
        double metre = USCustomary.INCH.getConverterTo(Units.METRE).convert(1);
        assertEquals(kilogram * 9.80665 * metre * 1000, Torque.ofInchOunces(1).newtonMillimetres(), 1e-12);
    }
}
