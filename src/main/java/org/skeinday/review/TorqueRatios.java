package org.skeinday.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.motor.Sample;

/**
 * Ratios of torque at the same share of breaking turns, by ranks of its logarithm: a day's motors against the batch's
 * earlier ones, and two meters on one batch. Each motor counts once, with its median; meters are never pooled.
 */
final class TorqueRatios {
    static final int FEWEST_MOTORS = 3;

    private TorqueRatios() {}

    /** For each batch and meter that was wound on that day: its motors of the day against those of earlier days. */
    static List<TestResult> stiffness(List<TorqueAtShare> winds, LocalDate day) {
        List<TestResult> asked = new ArrayList<>();
        by(winds, w -> w.batch().name() + " on " + w.meter()).forEach((name, ofBatch) -> {
            List<TorqueAtShare> today =
                    ofBatch.stream().filter(w -> w.day().equals(day)).toList();
            List<String> motors = today.stream().map(w -> w.motor().id()).toList();
            List<TorqueAtShare> earlier = ofBatch.stream()
                    .filter(w ->
                            w.day().isBefore(day) && !motors.contains(w.motor().id()))
                    .toList();
            if (!today.isEmpty()) {
                var question = new TestResult.Question(
                        Finding.Kind.BATCH_STIFFNESS,
                        name,
                        "batch " + name + " was stiffer or softer than before",
                        ids(today, earlier),
                        "times");
                asked.add(ratio(
                        question,
                        earlier,
                        today,
                        e -> "Batch " + name + " was " + percent(e, "stiffer", "softer")
                                + " than its motors before, at the same share of breaking turns"));
            }
        });
        return asked;
    }

    /** For each batch read on several meters: each pair of them. A motor read on both counts on either. */
    static List<TestResult> meters(List<TorqueAtShare> winds) {
        List<TestResult> asked = new ArrayList<>();
        by(winds, w -> w.batch().name()).forEach((batch, ofBatch) -> {
            Map<String, List<TorqueAtShare>> byMeter = by(ofBatch, TorqueAtShare::meter);
            List<String> names = List.copyOf(byMeter.keySet());
            for (int i = 0; i < names.size(); i++) {
                for (int j = i + 1; j < names.size(); j++) {
                    asked.add(pair(batch, names.get(i), names.get(j), byMeter));
                }
            }
        });
        return asked;
    }

    private static TestResult pair(String batch, String one, String other, Map<String, List<TorqueAtShare>> byMeter) {
        List<TorqueAtShare> first = byMeter.getOrDefault(one, List.of());
        List<TorqueAtShare> second = byMeter.getOrDefault(other, List.of());
        var question = new TestResult.Question(
                Finding.Kind.METERS,
                one + " and " + other,
                "the meters " + one + " and " + other + " read differently on batch " + batch,
                ids(first, second),
                "times");
        return ratio(
                question,
                first,
                second,
                e -> "Meter " + other + " reads " + percent(e, "more", "less") + " than " + one + " on batch " + batch
                        + "; their readings stay apart");
    }

    private static TestResult ratio(
            TestResult.Question question,
            List<TorqueAtShare> first,
            List<TorqueAtShare> second,
            Function<Effect, String> claim) {
        double[] before = logs(first);
        double[] after = logs(second);
        int n = before.length + after.length;
        Optional<Effect> effect = Math.min(before.length, after.length) < FEWEST_MOTORS
                ? Optional.empty()
                : Medians.shift(before, after, TestResult.CONFIDENCE).map(Effect::asRatio);
        return effect.map(e -> question.answered(n, e, claim.apply(e)))
                .orElseGet(() -> question.tooFew(
                        n,
                        "it needs " + FEWEST_MOTORS + " motors on each side, so far " + before.length + " and "
                                + after.length));
    }

    /** One for each motor: its median. */
    private static double[] logs(List<TorqueAtShare> winds) {
        return by(winds, w -> w.motor().id()).values().stream()
                .mapToDouble(ofMotor -> Math.log(Sample.of(
                                ofMotor.stream().mapToDouble(TorqueAtShare::nmm).toArray())
                        .median()))
                .toArray();
    }

    private static String percent(Effect ratio, String more, String less) {
        double percent = 100 * (ratio.value() - 1);
        return Findings.number(Math.abs(percent), 0) + " % " + (percent < 0 ? less : more);
    }

    private static List<String> ids(List<TorqueAtShare> one, List<TorqueAtShare> other) {
        List<String> ids = new ArrayList<>();
        one.forEach(w -> ids.add(w.id()));
        other.forEach(w -> ids.add(w.id()));
        return ids;
    }

    private static Map<String, List<TorqueAtShare>> by(List<TorqueAtShare> winds, Function<TorqueAtShare, String> key) {
        return winds.stream().collect(Collectors.groupingBy(key, TreeMap::new, Collectors.toList()));
    }
}
