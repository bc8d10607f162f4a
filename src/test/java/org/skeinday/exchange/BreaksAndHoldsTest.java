package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.ToldOfBreak;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.motor.MotorStep;
import org.skeinday.units.Torque;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.WindHeld;

/** What files say of motors that broke, and of holds. */
class BreaksAndHoldsTest {
    private static final String MOTOR = "tag,batch,team,loop,mass,broke,break turns,break torque,parted,break test\n";

    private static DayFiles.Read motor(String cells) {
        return Reading.with("motors.csv", MOTOR + "R-01,A,Reed,18.5 in,1.6 g," + cells + "\n");
    }

    private static DayFiles.Read attempt(String held, String step) {
        Map<String, String> texts = new HashMap<>(Reading.RIGHT);
        texts.put("attempts.csv", "entry,attempt,state,held,held to\nTeal,1,landed,\"" + held + "\"," + step + "\n");
        return Reading.of(texts);
    }

    private static <T> List<T> facts(DayFiles.Read read, Class<T> kind) {
        Reading.right(read);
        return read.facts().stream()
                .map(DayFiles.Named::body)
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }

    @Test
    void a_file_of_before_says_nothing_of_either() {
        assertEquals(List.of(), facts(Reading.of(Reading.RIGHT), MotorStep.class));
        assertEquals(List.of(), facts(Reading.of(Reading.RIGHT), WindHeld.class));
    }

    @Test
    void a_break_comes_with_its_turns_and_what_the_coach_said_of_it() {
        MotorStep step = facts(motor("2026-05-09 10:20,2150,0.9 in-ozf,strand,yes"), MotorStep.class)
                .get(0);
        assertEquals("broken strand", step.stage() + " " + step.parted());
        assertEquals(2150, step.motorTurns());
        assertEquals(Torque.parse("0.9 in-ozf").newtonMillimetres(), step.torqueNmm());
        assertTrue(Boolean.TRUE.equals(step.test()));
        assertNull(facts(motor("2026-05-09 10:20,,,,"), MotorStep.class).get(0).test(), "nobody has said");
    }

    @Test
    void numbers_of_a_break_come_with_where_they_came_from_and_whether_they_were_confirmed_or_asked_about() {
        DayFiles.Read read = Reading.with(
                "motors.csv",
                "tag,batch,team,loop,mass,broke,break turns,break torque,break numbers,break confirmed by\n"
                        + "R-01,A,Reed,18.5 in,1.6 g,2026-05-09 10:20,9000,0.9 in-ozf,"
                        + "crank-turns typed confirmed | peak-torque tap asked,Reed\n");
        String step = facts(read, MotorStep.class).get(0).id();
        List<ValueMarked> marks = facts(read, ValueMarked.class).stream()
                .filter(m -> m.flightId().equals(step))
                .toList();
        assertEquals(2, marks.size());
        assertTrue(marks.get(0).confirmed() && marks.get(0).confirmedBy() != null);
        assertEquals(9000, marks.get(0).number());
        var told = new ToldOfBreak(9000.0, marks.get(1).number(), null, 2000.0);
        assertEquals("", told.open(Measured.CRANK_TURNS, ValueMarks.of(marks)), "it was so");
        assertEquals("it was asked about where it was read", told.open(Measured.PEAK_TORQUE, ValueMarks.of(marks)));
        assertEquals(
                "break numbers",
                Reading.only(Reading.with(
                                "motors.csv",
                                "tag,batch,team,loop,mass,broke,break numbers\n"
                                        + "R-01,A,Reed,18.5 in,1.6 g,2026-05-09 10:20,crank-turns typed\n"))
                        .column(),
                "no turns, nothing to say of them");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                ",2150,,,;break turns;a motor that is whole has none",
                ",,,,yes;break test;a motor that is whole has none",
                "2026-05-09 10:20,0,,,;break turns;out of bounds",
                "2026-05-09 10:20,,,wall,;parted;'wall' is not known here",
                "2026-05-09 10:20,,,,perhaps;break test;'perhaps' is not known here",
            })
    void what_cannot_be_of_a_break_is_refused_at_its_cell(String cells, String column, String wrong) {
        CellError error = Reading.only(motor(cells));
        assertEquals(column, error.column(), error.text());
        assertEquals(true, error.wrong().contains(wrong), error.text());
    }

    @Test
    void readings_of_a_hold_come_with_the_step_in_which_each_was_read() {
        WindHeld held = facts(attempt("0.78 in-ozf at 0:40; 0.8 in-ozf at 1:30", "0.02 in-ozf"), WindHeld.class)
                .get(0);
        double inchOunce = Torque.ofInchOunces(1).newtonMillimetres();
        List<HeldRead> reads = held.readings();
        assertEquals(0.02 * inchOunce, reads.get(0).resolutionNmm(), 1e-9, "the meter's, coarser than the digits");
        assertEquals(0.1 * inchOunce, reads.get(1).resolutionNmm(), 1e-9, "the last digit's");
        assertEquals(40, reads.get(0).seconds());
    }

    @Test
    void a_hold_that_cannot_be_read_is_refused_with_an_example() {
        Reading.says(attempt("0.78 in-ozf", ""), 2, "held", "is no reading of a hold", "0.78 at 0:40");
    }
}
