package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.NextMotor;
import org.skeinday.motor.Section;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

class NextMotorTableTest {
    private static final Length LOOP = Length.ofMillimetres(470);
    private static final Mass MASS = Mass.ofGrams(1.7);

    /** Loops of 240, 264 … 720 mm. */
    private static final List<NextMotor> SIZES = NextMotor.table(
            MASS, Length.ofMillimetres(240), 44, Torque.ofNewtonMillimetres(6), Section.of(MASS, LOOP), 21);

    private static SizeAdvice.Flown flown(int remaining) {
        return new SizeAdvice.Flown(LOOP, MASS, new FlightFigures(205, 5, remaining, 10, new FlightTime(100_000)));
    }

    private static List<SizeAdvice.Flown> flights(int... remaining) {
        List<SizeAdvice.Flown> flights = new ArrayList<>();
        for (int r : remaining) {
            flights.add(flown(r));
        }
        return flights;
    }

    private static SizeAdvice advice(List<SizeAdvice.Flown> flights) {
        return SizeAdvice.of(flights, 0.20, MASS).orElseThrow();
    }

    @Test
    void many_left_suggest_a_shorter_and_thicker_motor_by_as_many_turns_as_were_too_many() {
        SizeAdvice advice = advice(flights(40, 44, 48)); // of 200: 22 % left, 10 % are aimed at
        assertEquals(RemainderReading.MANY, advice.reading());
        double turns = BreakingTurns.of(44, advice.loop(), MASS) / BreakingTurns.of(44, LOOP, MASS);
        assertEquals(0.88, turns, 1e-9);
        // 470 · 0.88^(2/3) = 431.6 mm; the section grows by 470 / 431.6 = 1.089
        assertEquals(
                "the last 3 valid flights left 22 % of the turns: " + RemainderReading.MANY.words()
                        + " (loop -38 mm, strip width +9 %)",
                advice.reason());
    }

    @Test
    void one_step_is_bounded_however_much_was_left() {
        double turns = BreakingTurns.of(44, advice(flights(150)).loop(), MASS) / BreakingTurns.of(44, LOOP, MASS);
        assertEquals(0.85, turns, 1e-9);
    }

    @Test
    void none_left_suggest_a_longer_and_thinner_motor() {
        SizeAdvice advice = advice(flights(0, 0));
        assertEquals(RemainderReading.NONE, advice.reading());
        assertTrue(advice.loop().compareTo(LOOP) > 0);
        assertTrue(advice.reason().contains("longer and thinner"), advice.reason());
    }

    @Test
    void some_left_or_flights_that_disagree_suggest_the_same_size() {
        assertEquals(470, advice(flights(20)).loop().millimetres(), 1e-9);
        SizeAdvice apart = advice(flights(0, 60));
        assertEquals(470, apart.loop().millimetres(), 1e-9);
        assertTrue(apart.reason().contains("disagree"), apart.reason());
    }

    @Test
    void only_the_last_three_flights_speak() {
        List<SizeAdvice.Flown> flights = flights(0, 0, 50, 50, 50);
        assertEquals(RemainderReading.MANY, advice(flights).reading());
    }

    @Test
    void a_lighter_limit_is_named_and_changes_loop_and_width_at_the_same_turns() {
        SizeAdvice advice = SizeAdvice.of(flights(20), 0.20, Mass.ofGrams(1.5)).orElseThrow();
        assertEquals(BreakingTurns.of(44, LOOP, MASS), BreakingTurns.of(44, advice.loop(), Mass.ofGrams(1.5)), 1e-6);
        assertTrue(advice.reason().contains("mass -0.20 g"), advice.reason());
    }

    @Test
    void the_row_nearest_to_the_advice_has_its_reason_and_the_others_say_on_which_side_they_lie() {
        List<NextMotorTable.Row> rows = NextMotorTable.of(SIZES, flights(44), 0.20);
        List<NextMotorTable.Row> suggested =
                rows.stream().filter(NextMotorTable.Row::suggested).toList();
        assertEquals(1, suggested.size());
        assertEquals(432, suggested.get(0).motor().loop().millimetres(), 1e-9);
        assertTrue(suggested.get(0).suggestion().contains("shorter and thicker at the same mass"));
        assertEquals("shorter and thicker than suggested", rows.get(0).suggestion());
        assertEquals("longer and thinner than suggested", rows.get(20).suggestion());
    }

    @Test
    void without_a_valid_flight_no_row_is_suggested() {
        for (NextMotorTable.Row row : NextMotorTable.of(SIZES, List.of(), 0.20)) {
            assertEquals(
                    new NextMotorTable.Row(row.motor(), false, "no valid flight with its remaining turns yet"), row);
        }
    }

    @Test
    void sizes_of_several_masses_are_refused() {
        List<NextMotor> mixed = new ArrayList<>(SIZES);
        mixed.addAll(
                NextMotor.table(Mass.ofGrams(1.5), LOOP, 44, Torque.ofNewtonMillimetres(6), Section.of(MASS, LOOP), 2));
        assertThrows(IllegalArgumentException.class, () -> NextMotorTable.of(mixed, flights(44), 0.20));
    }
}
