package org.skeinday.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.Resolution;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

/**
 * Whether flight time goes with something that was read or set: one slope over all models, each with a level of its own
 * ({@link CommonSlope}). Only flights of a known model.
 */
enum TimeAgainst {
    LAUNCH_TORQUE(Finding.Kind.LAUNCH_TORQUE, "launch torque", r -> r.flight().launchTorqueNmm()),
    HOLDING(Finding.Kind.HOLDING, "the seconds of holding", r -> r.wound().holdSeconds()),
    TEMPERATURE(Finding.Kind.TEMPERATURE, "temperature", r -> r.conditions().celsius());

    static final int FEWEST_FLIGHTS = 5;

    private final Finding.Kind kind;
    private final String words;
    private final Function<FlightRow, @Nullable Double> measured;

    TimeAgainst(Finding.Kind kind, String words, Function<FlightRow, @Nullable Double> measured) {
        this.kind = kind;
        this.words = words;
        this.measured = measured;
    }

    /** Those that enter. */
    List<FlightRow> with(List<FlightRow> rows) {
        return rows.stream()
                .filter(r -> r.flown().model() != null && r.seconds() != null && measured.apply(r) != null)
                .toList();
    }

    TestResult ask(List<FlightRow> rows, UnitSystem units) {
        List<FlightRow> used = with(rows);
        var question = new TestResult.Question(
                kind,
                "flight time",
                "flight time goes with " + words,
                used.stream().map(FlightRow::id).toList(),
                "s per " + step(units));
        if (used.size() < FEWEST_FLIGHTS) {
            return question.tooFew(
                    used.size(), "it needs " + FEWEST_FLIGHTS + " valid flights with both, so far " + used.size());
        }
        return CommonSlope.through(groups(used))
                .map(line -> line.readIn(read(used), Resolution.ofDigits(seconds(used))))
                .map(line -> answer(question, line, units))
                .orElseGet(() -> question.tooFew(used.size(), "it was the same on each model's flights"));
    }

    /** How finely it was read; moments are tapped, and a thermometer's steps are not known finer than its digits. */
    private Resolution read(List<FlightRow> rows) {
        double[] values = rows.stream().mapToDouble(this::must).toArray();
        return switch (this) {
            case LAUNCH_TORQUE -> Resolution.ofTorques(values);
            case HOLDING, TEMPERATURE -> Resolution.ofDigits(values);
        };
    }

    private static double[] seconds(List<FlightRow> rows) {
        return rows.stream()
                .mapToDouble(r -> Objects.requireNonNull(r.seconds()))
                .toArray();
    }

    private TestResult answer(TestResult.Question question, CommonSlope line, UnitSystem units) {
        Effect effect = line.effect(TestResult.CONFIDENCE).times(perStep(units));
        String claim = "With " + step(units) + " more " + what() + " flights were " + Findings.size(effect) + " s "
                + (effect.value() < 0 ? "shorter" : "longer");
        return question.answered(line.n(), effect, claim);
    }

    private String what() {
        return this == HOLDING ? "of holding" : this == TEMPERATURE ? "in the hall" : words;
    }

    /** By how much more is asked. */
    String step(UnitSystem units) {
        return switch (this) {
            case LAUNCH_TORQUE -> torqueStep(units) + " " + units.torqueUnit();
            case HOLDING -> "10 s";
            case TEMPERATURE -> "1 °C";
        };
    }

    /** About a division of a usual meter, in the meter's unit. */
    private static String torqueStep(UnitSystem units) {
        double per = units.torqueNumber(Torque.ofNewtonMillimetres(1));
        return per < 0.5 ? "0.1" : per < 2 ? "1" : "10";
    }

    private double perStep(UnitSystem units) {
        return switch (this) {
            case LAUNCH_TORQUE ->
                Double.parseDouble(torqueStep(units)) / units.torqueNumber(Torque.ofNewtonMillimetres(1));
            case HOLDING -> 10;
            case TEMPERATURE -> 1;
        };
    }

    private List<CommonSlope.Group> groups(List<FlightRow> rows) {
        Map<String, List<FlightRow>> byModel = new LinkedHashMap<>();
        for (FlightRow row : rows) {
            String model = Objects.requireNonNull(row.flown().model()).id();
            byModel.computeIfAbsent(model, k -> new ArrayList<>()).add(row);
        }
        return byModel.values().stream()
                .map(flights -> new CommonSlope.Group(
                        flights.stream().mapToDouble(this::must).toArray(), seconds(flights)))
                .toList();
    }

    private double must(FlightRow row) {
        return Objects.requireNonNull(measured.apply(row));
    }
}
