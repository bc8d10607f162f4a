package org.skeinday.standing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.timing.Rounding;
import org.skeinday.timing.RoundingBySize;

/**
 * How the flights of an event's entries become official, scores and places.
 *
 * @param ranks by what means are ordered: as they are, or as they are shown
 * @param trimmed the mean without best and worst, which then is the score; empty when none are dropped
 */
public record Scoring(
        FlightsRule flights,
        ScoreRule score,
        Optional<TrimmedMean> trimmed,
        FlightRules.MeanRanks ranks,
        TieRule ties) {
    private static final int NO_LIMIT = 500;
    private static final long HUNDREDTH_MS = 10;

    public static Scoring of(EventAdded event, FlightRules rules) {
        Integer inAll = rules.repeatsInAll();
        return new Scoring(
                new FlightsRule(
                        event.attempts(),
                        event.minimumMs(),
                        rules.repeatsPerFlight(),
                        inAll == null ? NO_LIMIT : inAll,
                        rules.ifShortRule()),
                ScoreRule.of(event),
                rules.drops() && rules.dropBest() + rules.dropWorst() < event.attempts()
                        ? Optional.of(new TrimmedMean(
                                event.attempts(), rules.dropBest(), rules.dropWorst(), Better.LONGER, hundredths()))
                        : Optional.empty(),
                rules.meanRanksRule(),
                tie(rules.tiesRule()));
    }

    private static RoundingBySize hundredths() {
        return new RoundingBySize(
                Rounding.NEAREST, HUNDREDTH_MS, Long.MAX_VALUE / HUNDREDTH_MS, Rounding.NEAREST, HUNDREDTH_MS);
    }

    private static TieRule tie(FlightRules.Ties ties) {
        return switch (ties) {
            case SHARED -> TieRule.SHARED;
            case BEST -> TieRule.BEST_SINGLE;
            case NEXT -> TieRule.NEXT_BEST;
        };
    }

    public FlightTally tally(List<DecidedFlight> flown) {
        return FlightTally.of(flown, flights);
    }

    /**
     * Milliseconds by which entries are ordered; empty without a score. Of a mean that ranks exactly it is the sum, which is
     * divided only when shown; of one that ranks as rounded what is shown.
     */
    public Optional<Long> countedMs(List<DecidedFlight> flown) {
        Optional<Long> sum = sumMs(tally(flown).officialMs());
        return ranksRounded() ? sum.map(this::meanMs) : sum;
    }

    /** What is shown of {@link #countedMs}. */
    public long shownMs(long countedMs) {
        return ranksRounded() ? countedMs : meanMs(countedMs);
    }

    private Optional<Long> sumMs(List<Long> official) {
        if (trimmed.isEmpty()) {
            return score.countedMs(official);
        }
        List<Optional<Long>> tries = new ArrayList<>();
        official.stream() // of fewer tries than there were when they were flown the first ones count
                .limit(trimmed.get().tries())
                .forEach(ms -> tries.add(Optional.of(ms)));
        while (tries.size() < trimmed.get().tries()) {
            tries.add(Optional.empty());
        }
        return trimmed.get().sumMs(tries);
    }

    /**
     * Which of an entry's official times its score is made of: of the best, the longest, of two equal ones the one flown first.
     *
     * @param official in the order flown, ms
     * @return their places in that order, from 0; none where there is no score
     */
    public Set<Integer> inScore(List<Long> official) {
        if (sumMs(official).isEmpty()) {
            return Set.of();
        }
        int tries = trimmed.map(TrimmedMean::tries).orElse(official.size());
        List<Integer> best = IntStream.range(0, Math.min(tries, official.size()))
                .boxed()
                .sorted(Comparator.comparing(official::get, Comparator.reverseOrder()))
                .toList();
        int from = trimmed.map(TrimmedMean::dropBest).orElse(0);
        int to = trimmed.map(mean -> tries - mean.dropWorst()).orElse(score.counts());
        return Set.copyOf(best.subList(Math.min(from, best.size()), Math.min(to, best.size())));
    }

    private long meanMs(long sumMs) {
        return trimmed.map(mean -> mean.meanMs(sumMs)).orElseGet(() -> score.shownMs(sumMs));
    }

    private boolean ranksRounded() {
        return isMean() && ranks == FlightRules.MeanRanks.ROUNDED;
    }

    /** Whether the score is a mean, which has its own hundredths. */
    public boolean isMean() {
        return trimmed.isPresent() || score.divisor() > 1;
    }

    /** The longer score first; ties by the rule; those without a score last, by name, without a place. */
    public List<Standings.Placed> order(Map<String, List<DecidedFlight>> flownByEntry) {
        List<Standings.Scored> scored = new ArrayList<>();
        flownByEntry.forEach((entry, flown) -> scored.add(
                new Standings.Scored(entry, countedMs(flown), tally(flown).officialMs())));
        return Standings.order(scored, ties, Better.LONGER);
    }
}
