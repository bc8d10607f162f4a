package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.attempt.AttemptsLeft.Choice;
import org.skeinday.attempt.AttemptsLeft.Option;
import org.skeinday.contest.ScoreKind;
import org.skeinday.motor.Sample;
import org.skeinday.standing.ScoreRule;

class AttemptsLeftTest {
    private static final ScoreRule BEST = new ScoreRule(ScoreKind.BEST, 1);
    private static final ScoreRule TWO = new ScoreRule(ScoreKind.SUM, 2);

    private static Option option(String motor, double risk, Long... ms) {
        return new Option(motor, "0.85", List.of(ms), risk);
    }

    /**
     * By hand: one attempt left, 100 s in hand, best counts. A sure 105 s brings 105; a motor that breaks half the time and
     * else flies 120 s brings (100 + 120) / 2 = 110: with a time in hand the risk is worth it.
     */
    @Test
    void with_a_time_in_hand_the_daring_choice_is_worth_it() {
        List<Choice> ranked = AttemptsLeft.ranked(
                List.of(100_000L),
                1,
                BEST,
                List.of(option("sure", 0, 105_000L), option("bold", 0.5, 120_000L)),
                Map.of());
        assertEquals("bold", ranked.get(0).options().get(0).motorId());
        assertEquals(110_000, ranked.get(0).expectedMs(), 1e-9);
        assertEquals(105_000, ranked.get(1).expectedMs(), 1e-9);
        assertEquals(0, ranked.get(0).noScore());
    }

    /** The same without a time in hand: 105 against 60, and an even chance of no score. */
    @Test
    void without_a_time_in_hand_it_is_not() {
        List<Choice> ranked = AttemptsLeft.ranked(
                List.of(), 1, BEST, List.of(option("bold", 0.5, 120_000L), option("sure", 0, 105_000L)), Map.of());
        assertEquals("sure", ranked.get(0).options().get(0).motorId());
        assertEquals(60_000, ranked.get(1).expectedMs(), 1e-9);
        assertEquals(0.5, ranked.get(1).noScore(), 1e-12);
    }

    @Test
    void a_motor_flies_once_unless_it_is_said_that_it_rests_in_between() {
        List<Option> options = List.of(option("a", 0, 100_000L), option("b", 0, 50_000L));
        assertEquals(
                1, AttemptsLeft.ranked(List.of(), 2, TWO, options, Map.of()).size());
        List<Choice> twice = AttemptsLeft.ranked(List.of(), 2, TWO, options, Map.of("a", 2));
        assertEquals(2, twice.size());
        assertEquals(200_000, twice.get(0).expectedMs(), 1e-9);
    }

    /** Seeded small cases against every sequence of motors with every outcome, weighed by its chance. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void it_finds_what_brute_force_finds(long seed) {
        Random random = new Random(seed);
        List<Option> options = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Long[] likely = new Long[1 + random.nextInt(3)];
            for (int k = 0; k < likely.length; k++) {
                likely[k] = 30_000L + random.nextInt(90_000);
            }
            options.add(option("m" + i % 3, random.nextInt(3) * 0.2, likely));
        }
        List<Long> had = random.nextBoolean() ? List.of(60_000L) : List.of();
        ScoreRule rule = random.nextBoolean() ? BEST : TWO;
        int left = 1 + random.nextInt(3);
        List<Choice> ranked = AttemptsLeft.ranked(had, left, rule, options, Map.of());
        double best = 0;
        for (List<Option> sequence : sequences(options, left)) {
            best = Math.max(best, average(sequence, had, rule));
        }
        assertEquals(best, ranked.get(0).expectedMs(), 1e-6);
        for (Choice choice : ranked) {
            assertEquals(average(choice.options(), had, rule), choice.expectedMs(), 1e-6);
        }
    }

    private static List<List<Option>> sequences(List<Option> options, int length) {
        List<List<Option>> all = new ArrayList<>();
        int combinations = (int) Math.pow(options.size(), length);
        for (int code = 0; code < combinations; code++) {
            List<Option> one = new ArrayList<>();
            for (int i = 0, rest = code; i < length; i++, rest /= options.size()) {
                one.add(options.get(rest % options.size()));
            }
            if (one.stream().map(Option::motorId).distinct().count() == length) {
                all.add(one);
            }
        }
        return all;
    }

    /** All outcomes as one flat list of (chance, times); scored by sorting, not by the program's own rule. */
    private static double average(List<Option> sequence, List<Long> had, ScoreRule rule) {
        List<double[]> outcomes = new ArrayList<>(List.of(new double[] {1}));
        for (Option option : sequence) {
            List<double[]> next = new ArrayList<>();
            for (double[] before : outcomes) {
                next.add(longer(before, option.risk(), -1));
                option.likelyMs()
                        .forEach(ms -> next.add(longer(
                                before, (1 - option.risk()) / option.likelyMs().size(), ms)));
            }
            outcomes = next;
        }
        double sum = 0;
        for (double[] outcome : outcomes) {
            List<Long> times = new ArrayList<>(had);
            for (int i = 1; i < outcome.length; i++) {
                if (outcome[i] >= 0) {
                    times.add((long) outcome[i]);
                }
            }
            times.sort(Comparator.reverseOrder());
            int count = Math.min(times.size(), rule == BEST ? 1 : 2);
            sum += outcome[0]
                    * times.subList(0, count).stream()
                            .mapToLong(Long::longValue)
                            .sum();
        }
        return sum;
    }

    private static double[] longer(double[] before, double chance, double time) {
        double[] after = java.util.Arrays.copyOf(before, before.length + 1);
        after[0] *= chance;
        after[before.length] = time;
        return after;
    }

    /** Values of equal chance have the mean of the sample, and lie as wide as one further value does. */
    @Test
    void a_forecast_as_values_of_equal_chance_keeps_middle_and_width() {
        Sample sample = Sample.of(100, 104, 98, 102, 96);
        List<Double> likely = sample.likely(201);
        assertEquals(sample.mean(), likely.get(100), 1e-9);
        var interval = sample.predictionInterval(0.9);
        assertEquals(interval.low(), likely.get(10), 0.35);
        assertEquals(interval.high(), likely.get(190), 0.35);
        assertThrows(IllegalArgumentException.class, () -> Sample.of(1).likely(3));
    }

    @Test
    void too_many_attempts_a_chance_above_one_and_no_times_are_refused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> AttemptsLeft.ranked(List.of(), 4, BEST, List.of(option("a", 0, 1L)), Map.of()));
        assertThrows(IllegalArgumentException.class, () -> option("a", 1.01, 1L));
        assertThrows(IllegalArgumentException.class, () -> option("a", 0));
        assertTrue(AttemptsLeft.ranked(List.of(), 1, BEST, List.of(), Map.of()).isEmpty());
    }
}
