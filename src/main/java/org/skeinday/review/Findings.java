package org.skeinday.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * All questions of an evening at once, so that the more is asked the more it takes ({@link Holm}): on an evening on which
 * nothing matters, nine times in ten or more there is no finding at all.
 */
public final class Findings {
    private Findings() {}

    /** The surest first, then those that say nothing yet, each as they were asked. */
    static List<Finding> of(List<TestResult> asked) {
        List<TestResult> answered =
                asked.stream().filter(a -> a.effect() != null).toList();
        double[] adjusted = Holm.adjusted(answered.stream()
                .mapToDouble(a -> Objects.requireNonNull(a.effect()).chance())
                .toArray());
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < answered.size(); i++) {
            TestResult a = answered.get(i);
            Effect effect = Objects.requireNonNull(a.effect());
            findings.add(
                    finding(a, Finding.Strength.of(adjusted[i]), sentence(a, effect, adjusted[i], answered.size())));
        }
        asked.stream()
                .filter(a -> a.effect() == null)
                .forEach(a ->
                        findings.add(finding(a, Finding.Strength.NO_EVIDENCE_YET, none(a) + ": " + a.lacking() + ".")));
        findings.sort(Comparator.comparing(Finding::strength));
        return List.copyOf(findings);
    }

    private static Finding finding(TestResult a, Finding.Strength strength, String sentence) {
        return new Finding(a.kind(), a.about(), sentence, a.n(), a.flights(), a.effect(), a.unit(), strength);
    }

    private static String none(TestResult a) {
        return "No evidence yet that " + a.whether();
    }

    private static String sentence(TestResult a, Effect effect, double adjusted, int questions) {
        String basis = "90 %: " + range(effect, a.unit()) + ", n = " + a.n();
        if (adjusted <= Finding.Strength.LIKELY_UP_TO) {
            return a.claim() + " (" + basis + ").";
        }
        boolean alone = effect.chance() <= Finding.Strength.LIKELY_UP_TO;
        String guarded = alone
                ? "; asked alone it would stand out, but of " + questions + " questions at once one may by chance"
                : "";
        return none(a) + " (" + basis + ")" + guarded + ".";
    }

    /** Two values with as many decimals as their distance deserves. */
    static String range(Effect effect, String unit) {
        double low = effect.interval().low();
        double high = effect.interval().high();
        int decimals = decimals(high - low);
        return number(low, decimals) + " to " + number(high, decimals) + (unit.isEmpty() ? "" : " " + unit);
    }

    /** So that a distance of this size shows two digits; at most four decimals. */
    static int decimals(double distance) {
        return distance <= 0 ? 2 : Math.max(0, Math.min(4, 1 - (int) Math.floor(Math.log10(distance))));
    }

    /** Never a minus before nothing. */
    static String number(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.matches("-0(\\.0+)?") ? text.substring(1) : text;
    }

    /** An effect's size, without its sign, as exact as its interval. */
    static String size(Effect effect) {
        int decimals = decimals(effect.interval().high() - effect.interval().low());
        return number(Math.abs(effect.value()), decimals);
    }
}
