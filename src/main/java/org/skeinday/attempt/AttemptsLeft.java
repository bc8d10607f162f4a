package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.standing.ScoreRule;
import org.skeinday.units.Preconditions;

/**
 * What to fly on the attempts that are left: every choice of motors and fractions, each with the score that it brings on
 * average and the chance of no score, counted out over the forecasts. Decided before the first of them; after it, ask again.
 */
public final class AttemptsLeft {
    /** More are not counted out at once: the first ones decide. */
    public static final int MOST_ATTEMPTS = 3;

    private static final int MOST_OPTIONS = 40;

    /**
     * One way to fly one attempt.
     *
     * @param fraction of breaking turns
     * @param likelyMs times that it takes with equal chance when the motor does not break, ms, at least one
     * @param risk chance that the motor breaks, which brings no time, 0 to 1
     */
    public record Option(String motorId, String fraction, List<Long> likelyMs, double risk) {
        public Option {
            likelyMs = List.copyOf(likelyMs);
            if (likelyMs.isEmpty() || likelyMs.stream().anyMatch(ms -> ms < 0)) {
                throw new IllegalArgumentException("A way to fly must have times of 0 or more, but had " + likelyMs);
            }
            Preconditions.within("A chance", risk, 0, 1);
        }

        public double expectedSeconds() {
            return likelyMs.stream().mapToLong(Long::longValue).average().orElse(0) / 1000;
        }
    }

    /**
     * A choice for all of them.
     *
     * @param expectedMs of the score, where no score counts nothing; of a mean the sum that it is divided from
     * @param noScore chance that the entry ends without any time
     */
    public record Choice(List<Option> options, double expectedMs, double noScore) {}

    private final List<Long> hadMs;
    private final int left;
    private final ScoreRule rule;
    private final List<Option> options;
    private final Map<String, Integer> flights;

    private AttemptsLeft(
            List<Long> hadMs, int left, ScoreRule rule, List<Option> options, Map<String, Integer> flights) {
        this.hadMs = List.copyOf(hadMs);
        this.left = left;
        this.rule = rule;
        this.options = List.copyOf(options);
        this.flights = Map.copyOf(flights);
    }

    /**
     * Every choice, the best first: by the expected score, then by the smaller chance of no score.
     *
     * @param hadMs official times so far
     * @param left attempts that are counted out, 1 to {@value #MOST_ATTEMPTS}
     * @param flights how often each motor may fly among them; once when it is not named
     */
    public static List<Choice> ranked(
            List<Long> hadMs, int left, ScoreRule rule, List<Option> options, Map<String, Integer> flights) {
        Preconditions.within("The number of attempts", left, 1, MOST_ATTEMPTS);
        Preconditions.within("The number of options", options.size(), 0, MOST_OPTIONS);
        var all = new AttemptsLeft(hadMs, left, rule, options, flights);
        List<Choice> found = new ArrayList<>();
        all.choose(0, new ArrayList<>(), new HashMap<>(), found);
        found.sort(Comparator.comparingDouble(Choice::expectedMs).reversed().thenComparingDouble(Choice::noScore));
        return found;
    }

    /** Options in their own order: which of them is flown first changes no score. */
    private void choose(int from, List<Option> taken, Map<String, Integer> used, List<Choice> found) {
        if (taken.size() == left) {
            found.add(valued(List.copyOf(taken)));
            return;
        }
        for (int i = from; i < options.size(); i++) {
            Option option = options.get(i);
            int before = used.getOrDefault(option.motorId(), 0);
            if (before < flights.getOrDefault(option.motorId(), 1)) {
                used.put(option.motorId(), before + 1);
                taken.add(option);
                choose(i, taken, used, found);
                taken.remove(taken.size() - 1);
                used.put(option.motorId(), before);
            }
        }
    }

    private Choice valued(List<Option> chosen) {
        double expected = expected(chosen, 0, new ArrayList<>(hadMs));
        double noScore =
                hadMs.isEmpty() ? chosen.stream().mapToDouble(Option::risk).reduce(1, (a, b) -> a * b) : 0;
        return new Choice(chosen, expected, noScore);
    }

    private double expected(List<Option> chosen, int at, List<Long> times) {
        if (at == chosen.size()) {
            return rule.countedMs(times).orElse(0L);
        }
        Option option = chosen.get(at);
        double sum = option.risk() == 0 ? 0 : option.risk() * expected(chosen, at + 1, times);
        double each = (1 - option.risk()) / option.likelyMs().size();
        for (long ms : option.likelyMs()) {
            times.add(ms);
            sum += each * expected(chosen, at + 1, times);
            times.remove(times.size() - 1);
        }
        return sum;
    }
}
