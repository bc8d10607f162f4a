package org.skeinday.review;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.skeinday.attempt.Part;

/** Where the day lost time: for each part of an attempt, how much longer than planned it took in the median, by sign. */
final class LostTime {
    static final int FEWEST = 5;

    private LostTime() {}

    static List<TestResult> ask(List<FlightRow> rows) {
        return Arrays.stream(Part.values()).map(part -> ask(part, rows)).toList();
    }

    private static TestResult ask(Part part, List<FlightRow> rows) {
        List<FlightRow> seen = with(part, rows);
        var question = new TestResult.Question(
                Finding.Kind.LOST_TIME,
                part.word(),
                "to " + part.word() + " takes another time than planned",
                seen.stream().map(FlightRow::id).toList(),
                "s");
        if (seen.size() < FEWEST) {
            return question.tooFew(
                    seen.size(), "it needs " + FEWEST + " attempts with plan and clock, so far " + seen.size());
        }
        double[] over = seen.stream().mapToDouble(r -> over(part, r)).toArray();
        Effect effect = Medians.bySign(over, TestResult.CONFIDENCE, 0).orElseThrow();
        long sum = Math.round(Arrays.stream(over).sum() / 60);
        String claim = "To " + part.word() + " took " + Findings.size(effect) + " s "
                + (effect.value() < 0 ? "less" : "longer") + " than planned in the median, " + Math.abs(sum)
                + " min " + (sum < 0 ? "less" : "more") + " in all";
        return question.answered(seen.size(), effect, claim);
    }

    /** Flights of which plan and clock of this part are known; spoilt ones too, as they took their time. */
    static List<FlightRow> with(Part part, List<FlightRow> rows) {
        return rows.stream()
                .filter(r -> r.step(part).map(s -> s.overSeconds() != null).orElse(false))
                .toList();
    }

    private static double over(Part part, FlightRow row) {
        return Objects.requireNonNull(row.step(part).orElseThrow().overSeconds());
    }
}
