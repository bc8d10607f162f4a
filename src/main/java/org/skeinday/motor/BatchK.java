package org.skeinday.motor;

import java.util.List;
import java.util.Optional;

/**
 * K of a batch from motors wound to breaking.
 *
 * @param median inches and grams
 * @param meanInterval 90 % by Student's t; empty below two motors
 * @param motors how many it rests on, at least one
 */
public record BatchK(double median, Optional<Interval> meanInterval, int motors) {
    private static final double CONFIDENCE = 0.90;

    /** Empty without any break test. */
    public static Optional<BatchK> of(List<BreakTest> tests) {
        if (tests.isEmpty()) {
            return Optional.empty();
        }
        Resolution turns = Resolution.ofDigits(
                tests.stream().mapToDouble(BreakTest::motorTurns).toArray());
        double step = tests.stream()
                .mapToDouble(t -> t.k() * turns.step() / t.motorTurns())
                .max()
                .orElse(0);
        Sample ks =
                Sample.of(tests.stream().mapToDouble(BreakTest::k).toArray()).readIn(new Resolution(step));
        Optional<Interval> interval = ks.size() < 2 ? Optional.empty() : Optional.of(ks.meanInterval(CONFIDENCE));
        return Optional.of(new BatchK(ks.median(), interval, ks.size()));
    }
}
