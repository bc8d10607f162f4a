package org.skeinday.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.skeinday.motor.Sample;

/**
 * Whether the first flight of a motor is shorter than its later ones: for each motor on one model the time on its first
 * use less the median of those on later uses, and the middle of these differences by signed ranks.
 */
final class FirstUse {
    static final int FEWEST_MOTORS = 5;

    private FirstUse() {}

    private record MotorOnModel(String motor, String model) {}

    static TestResult ask(List<FlightRow> rows) {
        Map<MotorOnModel, List<FlightRow>> flown = new LinkedHashMap<>();
        rows.stream()
                .filter(FirstUse::says)
                .forEach(r ->
                        flown.computeIfAbsent(key(r), k -> new ArrayList<>()).add(r));
        List<List<FlightRow>> pairs =
                flown.values().stream().filter(FirstUse::hasBoth).toList();
        var question = new TestResult.Question(
                Finding.Kind.FIRST_USE,
                "flight time by use",
                "the first flight of a motor differs from its later ones",
                pairs.stream().flatMap(List::stream).map(FlightRow::id).toList(),
                "s");
        if (pairs.size() < FEWEST_MOTORS) {
            return question.tooFew(
                    pairs.size(),
                    "it needs " + FEWEST_MOTORS + " motors with a valid first and later flight, so far "
                            + pairs.size());
        }
        Effect effect = Medians.bySignedRank(
                        pairs.stream().mapToDouble(FirstUse::difference).toArray(), TestResult.CONFIDENCE, 0)
                .orElseThrow();
        return question.answered(
                pairs.size(),
                effect,
                "The first flight of a motor was " + Findings.size(effect) + " s "
                        + (effect.value() < 0 ? "shorter" : "longer") + " than its later ones");
    }

    private static boolean says(FlightRow r) {
        return r.seconds() != null
                && r.wound().use() != null
                && r.flown().motor() != null
                && r.flown().model() != null;
    }

    private static MotorOnModel key(FlightRow r) {
        return new MotorOnModel(
                Objects.requireNonNull(r.flown().motor()).id(),
                Objects.requireNonNull(r.flown().model()).id());
    }

    private static boolean isFirst(FlightRow r) {
        return Objects.requireNonNull(r.wound().use()) == 1;
    }

    private static boolean hasBoth(List<FlightRow> flights) {
        return flights.stream().anyMatch(FirstUse::isFirst) && !flights.stream().allMatch(FirstUse::isFirst);
    }

    private static double difference(List<FlightRow> flights) {
        return median(flights, true) - median(flights, false);
    }

    private static double median(List<FlightRow> flights, boolean first) {
        return Sample.of(flights.stream()
                        .filter(r -> isFirst(r) == first)
                        .mapToDouble(r -> Objects.requireNonNull(r.seconds()))
                        .toArray())
                .median();
    }
}
