package org.skeinday.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.attempt.FlightFigures;
import org.skeinday.attempt.RemainderReading;
import org.skeinday.attempt.SizeAdvice;
import org.skeinday.units.Mass;

/**
 * What the turns left suggest for a model's next motor: the median share remaining, by sign, against the share from which
 * it counts as many. Only gentle landings say anything: flights that do not count are not among them.
 */
final class NextMotorAsked {
    static final int FEWEST_FLIGHTS = 5;

    private NextMotorAsked() {}

    /** @param manyFrom share of the turns at launch, above 0, below 1 */
    static List<TestResult> ask(List<FlightRow> rows, double manyFrom) {
        Map<Named, List<FlightRow>> byModel = new LinkedHashMap<>();
        rows.stream()
                .filter(r -> r.flight().figures().isPresent())
                .forEach(r -> Stream.ofNullable(r.flown().model())
                        .forEach(m -> byModel.computeIfAbsent(m, k -> new ArrayList<>())
                                .add(r)));
        List<TestResult> asked = new ArrayList<>();
        byModel.forEach((model, flights) -> asked.add(ask(model, flights, manyFrom)));
        return asked;
    }

    private static TestResult ask(Named model, List<FlightRow> flights, double manyFrom) {
        var question = new TestResult.Question(
                Finding.Kind.NEXT_MOTOR,
                model.name(),
                "another size of motor would suit " + model.name() + " better",
                flights.stream().map(FlightRow::id).toList(),
                "% of the turns left");
        if (flights.size() < FEWEST_FLIGHTS) {
            return question.tooFew(
                    flights.size(),
                    "it needs " + FEWEST_FLIGHTS + " valid flights with their turns remaining, so far "
                            + flights.size());
        }
        double[] percents = flights.stream()
                .mapToDouble(r -> 100 * figures(r).shareRemaining())
                .toArray();
        Effect effect = against(percents, 100 * manyFrom);
        RemainderReading reading = effect.value() == 0 ? RemainderReading.NONE : RemainderReading.MANY;
        String claim = model.name() + " left " + Findings.size(effect) + " % of the turns in the median: "
                + advice(flights, manyFrom).map(SizeAdvice::reason).orElse(reading.words());
        return question.answered(flights.size(), effect, claim);
    }

    /** Many is asked above the limit only; none, where the middle is nothing, of how many left nothing at all. */
    private static Effect against(double[] percents, double many) {
        Effect above = Medians.bySign(percents, TestResult.CONFIDENCE, many).orElseThrow();
        if (above.value() > many) {
            return above;
        }
        double[] left =
                java.util.Arrays.stream(percents).map(p -> p > 0 ? 1 : -1).toArray();
        boolean none = above.value() == 0;
        double chance = none
                ? Medians.bySign(left, TestResult.CONFIDENCE, 0).orElseThrow().chance()
                : 1;
        return new Effect(above.value(), above.interval(), chance);
    }

    private static FlightFigures figures(FlightRow row) {
        return row.flight().figures().orElseThrow();
    }

    /** Of the mass of the last motor; empty where a motor's size is not known. */
    private static Optional<SizeAdvice> advice(List<FlightRow> flights, double manyFrom) {
        List<SizeAdvice.Flown> sizes =
                flights.stream().flatMap(r -> r.forSize().stream()).toList();
        if (sizes.isEmpty()) {
            return Optional.empty();
        }
        Mass mass = Objects.requireNonNull(sizes.get(sizes.size() - 1).mass());
        return SizeAdvice.of(sizes, manyFrom, mass);
    }
}
