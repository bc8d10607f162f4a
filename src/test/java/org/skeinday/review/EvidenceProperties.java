package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.UsualFlights;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.MeterScale;
import org.skeinday.evidence.NotCounted;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.WhatCounts;
import org.skeinday.units.FlightTime;
import org.skeinday.units.UnitSystem;

/** Random days: what does not count is in no fit, and a number that changes moves what rests on it and nothing else. */
class EvidenceProperties {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 28);
    private static final MeterScale SCALE = new MeterScale(9, "9 mN·m");
    private static final double BREAKING = 2700;

    static LongStream seeds() {
        return LongStream.range(1, 26);
    }

    private static List<FlightRow> day(SplittableRandom random) {
        List<Flight> told = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            told.add(flight(i, random));
        }
        return doubting(told);
    }

    /** One in eight numbers is absurd, one in five only offered, one in ten of those confirmed; some touched something. */
    private static Flight flight(int i, SplittableRandom random) {
        double torque = random.nextInt(8) == 0 ? 60 : 3 + 4 * random.nextDouble();
        double remaining = random.nextInt(8) == 0 ? 330 : random.nextInt(80);
        long ms = random.nextInt(8) == 0 ? 1_900_000 : 90_000 + random.nextInt(40_000);
        boolean touched = random.nextInt(6) == 0;
        boolean judged = random.nextInt(3) == 0;
        String reason = judged && random.nextInt(3) == 0 ? "touched a beam" : "";
        var flight = new Flight(
                "f" + i,
                true,
                "m" + i % 2,
                "a" + i % 10,
                i * 600_000L,
                10,
                200.0 + random.nextInt(20),
                5.0,
                remaining,
                8.5,
                torque,
                ms,
                FlightEvidence.good());
        List<ValueMarked> marks = new ArrayList<>();
        for (Measured what : List.of(Measured.LAUNCH_TORQUE, Measured.REMAINING, Measured.TIME)) {
            if (random.nextInt(5) == 0) {
                boolean confirmed = random.nextInt(10) == 0;
                marks.add(new ValueMarked(
                        flight.id(), what.word(), flight.number(what), Source.OFFERED.word(), confirmed, null, null));
            }
        }
        return flight.with(new FlightEvidence(
                judged,
                WhatCounts.flight(judged, reason, "", touched ? "touched at 0:31.0" : ""),
                null,
                ValueMarks.of(marks),
                List.of()));
    }

    /** As the record does: each held against the others of its model. */
    private static List<FlightRow> doubting(List<Flight> flights) {
        return flights.stream().map(f -> row(doubting(f, flights))).toList();
    }

    private static Flight doubting(Flight flight, List<Flight> all) {
        List<Flight> ofModel = all.stream()
                .filter(f -> Objects.equals(f.modelId(), flight.modelId()))
                .toList();
        return flight.with(flight.said()
                .doubting(flight.told(SCALE, BREAKING, UsualFlights.of(ofModel).without(flight))
                        .doubts()));
    }

    private static FlightRow row(Flight f) {
        Named model = new Named(String.valueOf(f.modelId()), String.valueOf(f.modelId()));
        Named motor = new Named(String.valueOf(f.motorId()), String.valueOf(f.motorId()));
        int use = 1 + (int) (f.atMs() / 6_000_000);
        return new FlightRow(
                f,
                DAY,
                new FlightContext(null, null, model, motor, null, null),
                new Wound("A", use, 0.85, f.peakTorqueNmm(), 12.0 + use, 470.0, 1.7),
                new Conditions(18.0 + f.atMs() % 7, null, null),
                List.of(),
                List.of());
    }

    /** Everything that is learned of a day. */
    private record Learned(
            TestResult torque,
            TestResult holding,
            TestResult firstUse,
            List<TestResult> nextMotor,
            FlightForecast forecast,
            List<Picture.@Nullable Fit> fits) {}

    private static Learned learn(List<FlightRow> rows) {
        List<FlightRow> evidence =
                rows.stream().flatMap(r -> r.evidence().stream()).toList();
        List<Picture> fits = new ArrayList<>();
        for (String model : List.of("m0", "m1")) {
            List<FlightRow> ofModel = rows.stream()
                    .filter(r -> model.equals(r.flight().modelId()))
                    .toList();
            fits.add(new FlightPictures(ofModel, List.of(), UnitSystem.METRIC).timeAgainstLaunchTorque());
        }
        List<FlightForecast.Flown> flown = evidence.stream()
                .flatMap(r -> java.util.stream.Stream.ofNullable(r.flight().timeMs()))
                .map(ms -> new FlightForecast.Flown(new FlightTime(ms), 1))
                .toList();
        return new Learned(
                TimeAgainst.LAUNCH_TORQUE.ask(evidence, UnitSystem.METRIC),
                TimeAgainst.HOLDING.ask(evidence, UnitSystem.METRIC),
                FirstUse.ask(evidence),
                NextMotorAsked.ask(evidence, 0.2),
                FlightForecast.of(flown, 1, 0.9),
                fits.stream().map(Picture::fit).collect(Collectors.toList()));
    }

    /** The rows with one number of one flight changed, and its marks and doubts kept as they were. */
    private static List<FlightRow> with(List<FlightRow> rows, String id, Measured what, double number) {
        return rows.stream()
                .map(r -> r.id().equals(id) ? row(moved(r.flight(), what, number)) : r)
                .toList();
    }

    private static Flight moved(Flight flight, Measured what, double number) {
        List<ValueMarked> marks = new ArrayList<>();
        for (Measured each : Measured.values()) {
            flight.said()
                    .marks()
                    .of(each, flight.number(each))
                    .ifPresent(m -> marks.add(
                            each == what
                                    ? new ValueMarked(
                                            m.flightId(), m.measured(), number, m.source(), m.confirmed(), null, null)
                                    : m));
        }
        return flight.with(what, number).with(flight.said().marked(ValueMarks.of(marks)));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void nothing_that_is_offered_undecided_left_out_or_doubted_is_in_any_fit(long seed) {
        System.out.println("seed " + seed);
        List<FlightRow> rows = day(new SplittableRandom(seed));
        Learned learned = learn(rows);
        int held = 0;
        for (FlightRow row : rows) {
            for (Measured what : List.of(Measured.LAUNCH_TORQUE, Measured.REMAINING, Measured.TIME)) {
                Double number = Objects.requireNonNull(row.flight().number(what));
                NotCounted because = row.flight().said().counts(what, number).because();
                if (because != null) {
                    assertEquals(
                            learned, learn(with(rows, row.id(), what, number * 3)), row.id() + " " + what + because);
                    held++;
                }
            }
        }
        assertTrue(held > 20, "such days have many: " + held);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_number_that_changes_moves_what_rests_on_it_and_nothing_else(long seed) {
        System.out.println("seed " + seed);
        List<FlightRow> rows = day(new SplittableRandom(seed));
        Learned learned = learn(rows);
        FlightRow row = rows.stream()
                .filter(r -> r.evidence()
                        .filter(e ->
                                e.flight().figures().isPresent() && e.flight().launchTorqueNmm() != null)
                        .isPresent())
                .findFirst()
                .orElseThrow();
        Learned torque = learn(with(rows, row.id(), Measured.LAUNCH_TORQUE, 8.4));
        assertNotEquals(learned.torque(), torque.torque());
        assertEquals(
                learned,
                new Learned(
                        learned.torque(),
                        torque.holding(),
                        torque.firstUse(),
                        torque.nextMotor(),
                        torque.forecast(),
                        learned.fits()));
        Learned remaining = learn(with(rows, row.id(), Measured.REMAINING, 150));
        assertEquals(
                learned,
                new Learned(
                        remaining.torque(),
                        remaining.holding(),
                        remaining.firstUse(),
                        learned.nextMotor(),
                        remaining.forecast(),
                        remaining.fits()));
        Learned time = learn(with(rows, row.id(), Measured.TIME, 150_000));
        assertNotEquals(learned.torque(), time.torque());
        assertNotEquals(learned.holding(), time.holding());
        assertNotEquals(learned.forecast(), time.forecast());
        assertEquals(learned.nextMotor(), time.nextMotor(), "a share of turns has no time in it");
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void what_is_confirmed_typed_anew_or_decided_is_in_the_fits_at_once(long seed) {
        List<FlightRow> rows = day(new SplittableRandom(seed));
        for (FlightRow row : rows) {
            Flight flight = row.flight();
            Double number = Objects.requireNonNull(flight.number(Measured.TIME));
            NotCounted because = flight.said().counts(Measured.TIME, number).because();
            if (because == NotCounted.OFFERED || because == NotCounted.DOUBTED) {
                var so = new ValueMarked(flight.id(), "time", number, "offered", true, "somebody", 1L);
                FlightEvidence said = flight.said().marked(ValueMarks.of(List.of(so)));
                List<FlightRow> confirmed = rows.stream()
                        .map(r -> r.id().equals(row.id()) ? row(flight.with(said)) : r)
                        .toList();
                assertNotEquals(learn(rows).forecast(), learn(confirmed).forecast(), row.id());
            }
        }
    }
}
