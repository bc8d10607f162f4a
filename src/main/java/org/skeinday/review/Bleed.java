package org.skeinday.review;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** How much torque a hold costs: for each batch the median share lost per decade of time ({@code Hold}), by sign. */
final class Bleed {
    static final int FEWEST_HOLDS = 5;
    private static final double NORMAL_90 = 1.645;

    private Bleed() {}

    static List<TestResult> ask(List<HeldWind> holds) {
        Map<String, List<HeldWind>> byBatch =
                holds.stream().collect(Collectors.groupingBy(h -> h.batch().name(), TreeMap::new, Collectors.toList()));
        return byBatch.entrySet().stream()
                .map(e -> ask(e.getKey(), e.getValue()))
                .toList();
    }

    private static TestResult ask(String batch, List<HeldWind> holds) {
        var question = new TestResult.Question(
                Finding.Kind.HOLD_BLEED,
                batch,
                "torque of batch " + batch + " falls while it is held",
                holds.stream().map(HeldWind::id).toList(),
                "% per tenfold time");
        if (holds.size() < FEWEST_HOLDS) {
            return question.tooFew(
                    holds.size(), "it needs " + FEWEST_HOLDS + " measured holds, so far " + holds.size());
        }
        double[] percents =
                holds.stream().mapToDouble(h -> 100 * h.hold().bleed()).toArray();
        Effect effect =
                Medians.bySign(percents, TestResult.CONFIDENCE, 0).orElseThrow().notSurerThan(100 * readAs(holds));
        return question.answered(
                holds.size(),
                effect,
                "Torque of batch " + batch + (effect.value() < 0 ? " rose" : " fell") + " by " + Findings.size(effect)
                        + " % for each tenfold time of holding");
    }

    /** Half of the interval that a mean of so many holds has by the error of each alone (normal, 90 %). */
    private static double readAs(List<HeldWind> holds) {
        double squares = holds.stream()
                .mapToDouble(h -> h.hold().deviation() * h.hold().deviation())
                .sum();
        return NORMAL_90 * Math.sqrt(squares) / holds.size();
    }
}
