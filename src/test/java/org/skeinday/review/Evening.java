package org.skeinday.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.Part;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.motor.Hold;
import org.skeinday.units.Torque;

/**
 * Simulated evenings: 45 flights of three models that differ much, with effects put in; with none of them it is noise.
 *
 * @param perNmm s of flight time for each N·mm of launch torque
 * @param first s that the first flight of a motor is longer
 * @param perHeld s for each second of holding
 * @param lost s that winding takes longer than planned
 * @param meter ratio of what meter B reads to what A reads
 * @param stiffer ratio of the day's torque to that before
 * @param bleed k of the holds
 * @param left share of turns left, in the middle
 */
record Evening(
        double perNmm,
        double first,
        double perHeld,
        double lost,
        double meter,
        double stiffer,
        double bleed,
        double left) {
    static final Evening NOISE = new Evening(0, 0, 0, 0, 1, 1, 0, 0.20);
    static final LocalDate DAY = LocalDate.of(2026, 11, 28);
    static final Named BATCH = new Named("b1", "Lot 7");

    static Named model(int i) {
        return new Named("model" + i, "Model " + "ABC".charAt(i));
    }

    EveningReview at(long seed) {
        var random = new SplittableRandom(seed);
        List<FlightRow> flights = new ArrayList<>();
        for (int i = 0; i < 45; i++) {
            flights.add(flight(i, random));
        }
        return new EveningReview(flights, winds(random), holds(random), DAY);
    }

    /** Nine motors with five uses each, three to a model; the models are 40 s apart and wound to other torques. */
    private FlightRow flight(int i, SplittableRandom random) {
        int motor = i / 5;
        int model = motor / 3;
        int use = i % 5 + 1;
        double torque = 3 + model + 2 * random.nextDouble();
        double held = 10 + 30 * random.nextDouble();
        double seconds = 140 - 40 * model + perNmm * torque + perHeld * held + 4 * random.nextGaussian();
        seconds += use == 1 ? first : 0;
        double remaining = 200 * Math.min(0.9, Math.max(0.01, left + 0.05 * random.nextGaussian()));
        var flight = new Flight(
                "f" + i,
                true,
                null,
                null,
                i * 600_000L,
                10,
                205.0,
                5.0,
                remaining,
                torque + 1,
                torque,
                Math.round(1000 * seconds),
                FlightEvidence.good());
        return new FlightRow(
                flight,
                DAY,
                new FlightContext(null, null, model(model), new Named("m" + motor, "A-0" + motor), BATCH, null),
                new Wound("A", use, 0.85, torque + 1, held, 470.0, 1.7),
                new Conditions(18 + 4 * random.nextDouble(), null, null),
                List.of(Math.round(1000 * seconds)),
                List.of(step(Part.PREPARE, 0, random), step(Part.WIND, lost, random), step(Part.LOAD, 0, random)));
    }

    private static StepTime step(Part part, double lost, SplittableRandom random) {
        return new StepTime(part, 300L, Math.round(300 + lost + 30 * random.nextGaussian()));
    }

    /** Eight motors on an earlier day on meter A, eight on B, six of the day on A. */
    private List<TorqueAtShare> winds(SplittableRandom random) {
        List<TorqueAtShare> winds = new ArrayList<>();
        for (int i = 0; i < 22; i++) {
            boolean onB = i >= 8 && i < 16;
            boolean today = i >= 16;
            double torque = 2.5 * Math.exp(0.04 * random.nextGaussian()) * (onB ? meter : 1) * (today ? stiffer : 1);
            winds.add(new TorqueAtShare(
                    "w" + i,
                    new Named("w" + i, "W-" + i),
                    BATCH,
                    onB ? "B" : "A",
                    today ? DAY : DAY.minusDays(30),
                    torque));
        }
        return winds;
    }

    private List<HeldWind> holds(SplittableRandom random) {
        List<HeldWind> holds = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            Hold hold = new Hold(bleed + 0.01 * random.nextGaussian(), Torque.ofNewtonMillimetres(5));
            holds.add(new HeldWind("h" + i, BATCH, hold));
        }
        return holds;
    }
}
