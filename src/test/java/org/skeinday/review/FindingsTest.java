package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.attempt.Flight;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.motor.Interval;
import org.skeinday.motor.TorqueCurve;
import org.skeinday.motor.TorqueReading;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

class FindingsTest {
    private static TestResult asked(String about, double chance) {
        return new TestResult.Question(Finding.Kind.FIRST_USE, about, about + " matters", List.of("f1", "f2"), "s")
                .answered(12, new Effect(-4.2, new Interval(-7.31, -1.1, 0.90), chance), about + " cost 4.2 s");
    }

    @Test
    void a_finding_says_its_interval_and_what_it_rests_on() {
        Finding said = Findings.of(List.of(asked("It", 0.02))).get(0);
        assertEquals("It cost 4.2 s (90 %: -7.3 to -1.1 s, n = 12).", said.sentence());
        assertEquals(Finding.Strength.LIKELY, said.strength());
        assertEquals(List.of("f1", "f2"), said.flights());
        assertEquals(
                Finding.Strength.CLEAR,
                Findings.of(List.of(asked("It", 0.009))).get(0).strength());
    }

    @Test
    void what_would_stand_out_alone_is_held_back_among_many_and_says_why() {
        List<TestResult> many = new ArrayList<>(List.of(asked("This", 0.03)));
        for (int i = 0; i < 5; i++) {
            many.add(asked("That", 0.7));
        }
        Finding said = Findings.of(many).get(0);
        assertFalse(said.isEvidence());
        assertEquals(
                "No evidence yet that This matters (90 %: -7.3 to -1.1 s, n = 12); asked alone it would stand out, but of"
                        + " 6 questions at once one may by chance.",
                said.sentence());
    }

    @Test
    void the_surest_come_first_and_too_few_says_how_many_are_missing() {
        TestResult few = new TestResult.Question(Finding.Kind.HOLDING, "x", "holding matters", List.of(), "s")
                .tooFew(2, "it needs 5 flights, so far 2");
        List<Finding> said = Findings.of(List.of(few, asked("A", 0.02), asked("B", 0.001)));
        assertEquals(List.of("B", "A", "x"), said.stream().map(Finding::about).toList());
        assertEquals(
                "No evidence yet that holding matters: it needs 5 flights, so far 2.",
                said.get(2).sentence());
        assertEquals(null, said.get(2).estimate());
    }

    @Test
    void without_flights_every_question_is_answered_with_no_evidence_yet() {
        List<Finding> said =
                new EveningReview(List.of(), List.of(), List.of(), Evening.DAY).findings(UnitSystem.METRIC);
        assertEquals(9, said.size()); // three slopes, first use, five parts
        said.forEach(f -> assertTrue(f.sentence().startsWith("No evidence yet that "), f.sentence()));
    }

    @Test
    void a_slope_is_said_in_the_reader_s_units() {
        EveningReview evening = new Evening(9, 0, 0, 0, 1, 1, 0, 0.2).at(1);
        Finding metric = evening.findings(UnitSystem.METRIC).get(0);
        Finding inch = evening.findings(UnitSystem.INCH).get(0);
        assertTrue(metric.sentence().startsWith("With 1 mN·m more launch torque flights were "), metric.sentence());
        assertTrue(inch.sentence().startsWith("With 0.1 in·ozf more launch torque flights were "), inch.sentence());
        assertEquals(0.706155, inch.estimate().value() / metric.estimate().value(), 1e-6); // NIST SP 811, B.8
    }

    private static FlightRow flight(String id, Double torque, Long ms, Counts counts) {
        var flight =
                new Flight(id, true, null, null, 0, 10, 205.0, 5.0, 60.0, null, torque, ms, FlightEvidence.of(counts));
        return new FlightRow(
                flight,
                LocalDate.of(2026, 11, 28),
                new FlightContext(null, null, new Named("m", "M"), null, null, null),
                Wound.UNKNOWN,
                Conditions.UNKNOWN,
                List.of(),
                List.of());
    }

    private static List<FlightRow> evidence(List<FlightRow> rows) {
        return rows.stream().flatMap(r -> r.evidence().stream()).toList();
    }

    @Test
    void a_spoilt_flight_and_one_that_lacks_a_figure_enter_no_fit() {
        List<FlightRow> rows = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            rows.add(flight("f" + i, 3.0 + i, 100_000L + 9_000 * i + i % 2 * 500, Counts.yes()));
        }
        TestResult clean = TimeAgainst.LAUNCH_TORQUE.ask(evidence(rows), UnitSystem.METRIC);
        rows.add(flight("spoilt", 20.0, 1_000L, Counts.leftOut("touched a beam")));
        rows.add(flight("no torque", null, 1_000L, Counts.yes()));
        rows.add(flight("no time", 4.0, null, Counts.yes()));
        assertEquals(clean, TimeAgainst.LAUNCH_TORQUE.ask(evidence(rows), UnitSystem.METRIC));
        assertEquals(6, clean.n());
    }

    @Test
    void many_turns_left_on_gentle_landings_suggest_a_shorter_and_thicker_motor_and_contacts_say_nothing() {
        List<FlightRow> rows = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            rows.add(flight("f" + i, 3.0, 100_000L, Counts.yes())); // 60 of 200 left
        }
        Finding said = Findings.of(NextMotorAsked.ask(evidence(rows), 0.20)).get(0);
        assertEquals(
                "M left 30.00 % of the turns in the median: many left: the section is too small for this rotor; shorter"
                        + " and thicker at the same mass, or less pitch (90 %: 30.00 to 30.00 % of the turns left, n = 7).",
                said.sentence());
        List<FlightRow> touched = rows.stream()
                .map(r -> flight(r.id(), 3.0, 100_000L, Counts.leftOut("hit the wall")))
                .toList();
        assertEquals(List.of(), NextMotorAsked.ask(evidence(touched), 0.20));
    }

    @Test
    void two_meters_are_never_pooled_for_stiffness_and_a_motor_counts_once() {
        List<TorqueAtShare> winds = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            winds.add(wind("a" + i, "A", 10, 2.0 + 0.01 * i));
            winds.add(wind("b" + i, "B", 0, 3.0 + 0.01 * i));
            winds.add(wind("b" + i, "B", 0, 3.1 + 0.01 * i)); // the same motor again
        }
        Finding stiff = Findings.of(TorqueRatios.stiffness(winds, Evening.DAY)).get(0);
        assertTrue(stiff.sentence().endsWith(": it needs 3 motors on each side, so far 0 and 4."), stiff.sentence());
        Finding meters = Findings.of(TorqueRatios.meters(winds)).get(0);
        assertEquals(8, meters.n());
        assertEquals(3.05 / 2.0, meters.estimate().value(), 1e-2);
        assertTrue(
                meters.sentence()
                        .startsWith("Meter B reads 52 % more than A on batch Lot 7; their readings stay apart"),
                meters.sentence());
    }

    private static TorqueAtShare wind(String motor, String meter, int daysAgo, double nmm) {
        return new TorqueAtShare(
                motor, new Named(motor, motor), Evening.BATCH, meter, Evening.DAY.minusDays(daysAgo), nmm);
    }

    @Test
    void torque_at_a_share_goes_with_the_section_to_the_power_of_one_and_a_half_and_is_never_extrapolated() {
        TorqueCurve curve = TorqueCurve.of(List.of(
                new TorqueReading(0, Torque.ofNewtonMillimetres(0)),
                new TorqueReading(1000, Torque.ofNewtonMillimetres(2)),
                new TorqueReading(2000, Torque.ofNewtonMillimetres(4))));
        // 3.72 g on 1000 mm at 0.93 g/cm³ is a section of 4 mm²: torque of 1 mm² is an eighth
        var size = new TorqueAtShare.Size(Length.ofMillimetres(1000), Mass.ofGrams(3.72), 2000);
        assertEquals(0.25, TorqueAtShare.at(0.5, curve, size).orElseThrow(), 1e-9);
        var longer = new TorqueAtShare.Size(Length.ofMillimetres(1000), Mass.ofGrams(3.72), 5000);
        assertTrue(TorqueAtShare.at(0.5, curve, longer).isEmpty());
    }
}
