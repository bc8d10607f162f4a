package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

class RubberPublishedTest {
    private static final double SQUARE_MILLIMETRES_PER_SQUARE_INCH = 25.4 * 25.4;

    /** Reckoned through in inches, ounces and pounds; the program's way is N·mm, turns and grams. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/motor/specific-energy.csv", numLinesToSkip = 1)
    void a_torque_that_gives_the_published_energy_per_pound_gives_as_much_per_kilogram(
            String source, double footPoundsPerPound, double joulesPerKilogram, double tolerance) {
        double pounds = 0.004;
        double inchOunces = footPoundsPerPound * pounds * 12 * 16 / (2 * Math.PI * 2500);
        Torque level = Torque.ofInchOunces(inchOunces);
        UnwindingCurve curve = UnwindingCurve.of(List.of(new TorqueReading(2500, level), new TorqueReading(0, level)));
        double specific = curve.specificEnergyJoulesPerKilogram(Mass.ofOunces(pounds * 16));
        assertEquals(joulesPerKilogram, specific, tolerance, source);
        assertEquals(footPoundsPerPound, UnwindingCurve.footPoundsPerPound(specific), 1e-6, source);
    }

    /** The strip's section gives the turns; the program goes by length and mass, with K 41.5 for 10.64 (calc). */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/motor/sections.csv", numLinesToSkip = 1)
    void breaking_turns_by_length_and_mass_are_those_by_section(
            String source, double widthIn, double thicknessIn, int strands, double turnsPerInch, double tolerance) {
        double squareInches = widthIn * thicknessIn * strands;
        double squareMillimetres = squareInches * SQUARE_MILLIMETRES_PER_SQUARE_INCH;
        Length loop = Length.ofInches(17);
        Mass mass = Mass.ofGrams(Section.DEFAULT_DENSITY * squareMillimetres * loop.millimetres() / 1000);
        assertEquals(turnsPerInch, BreakingTurns.of(41.5, loop, mass) / 17, tolerance, source);
        assertEquals(squareMillimetres, Section.of(mass, loop).squareMillimetres(), 1e-9, source);
        double kOfTheRule = BreakingTurns.k(10.64 / Math.sqrt(squareInches) * 17, loop, mass);
        assertEquals(41.5, kOfTheRule, 0.05, source);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/motor/relaxation.csv", numLinesToSkip = 1)
    void torque_that_relaxes_at_the_published_rate_is_forecast_a_decade_and_two_later(String source, double rate) {
        List<Hold.Reading> readings = new ArrayList<>();
        for (double seconds : new double[] {6, 10, 20, 40, 60}) {
            Torque torque = Torque.ofNewtonMillimetres(8 * (1 - rate * Math.log10(seconds)));
            readings.add(new Hold.Reading(seconds, torque));
        }
        Hold hold = Hold.of(readings);
        assertEquals(rate, hold.bleed(), 1e-12, source);
        HoldBleed bleed = new HoldBleed(List.of(hold, hold, hold));
        Torque read = Torque.ofNewtonMillimetres(8 * (1 - rate));
        assertEquals(8 * (1 - 2 * rate), bleed.at(100, read, 10).newtonMillimetres(), 1e-9, source);
        assertEquals(8 * (1 - 3 * rate), bleed.at(1000, read, 10).newtonMillimetres(), 1e-9, source);
    }
}
