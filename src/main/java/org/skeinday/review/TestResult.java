package org.skeinday.review;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One question with its answer, before it is known how many questions were asked at once.
 *
 * @param whether what would be so, to follow "that": "flight time goes with launch torque"
 * @param n values the answer rests on
 * @param unit of the answer, empty for a ratio
 * @param effect null when there were too few
 * @param claim the finding in words when it stands, without interval
 * @param lacking what is missing, when there were too few
 */
record TestResult(
        Finding.Kind kind,
        String about,
        String whether,
        int n,
        List<String> flights,
        String unit,
        @Nullable Effect effect,
        String claim,
        String lacking) {
    /** Of every interval that is shown. */
    static final double CONFIDENCE = 0.90;

    /** What is asked, and of what. */
    record Question(Finding.Kind kind, String about, String whether, List<String> flights, String unit) {
        TestResult answered(int n, Effect effect, String claim) {
            return new TestResult(kind, about, whether, n, flights, unit, effect, claim, "");
        }

        /** @param lacking for example "it needs 5 valid flights, so far 2" */
        TestResult tooFew(int n, String lacking) {
            return new TestResult(kind, about, whether, n, flights, unit, null, "", lacking);
        }
    }
}
