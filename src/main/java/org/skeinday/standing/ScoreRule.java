package org.skeinday.standing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ScoreKind;
import org.skeinday.units.Preconditions;

/**
 * How an entry's official times become its score.
 *
 * @param bestOf how many of the best count, 1 or more; a missing one counts nothing
 */
public record ScoreRule(ScoreKind kind, int bestOf) {
    public ScoreRule {
        Preconditions.atLeast("The number of attempts that count", bestOf, 1);
    }

    /** The sum of the times that count, in ms; empty without a time. For a mean it is divided only when shown. */
    public Optional<Long> countedMs(List<Long> officialMs) {
        if (officialMs.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(officialMs.stream()
                .sorted(Comparator.reverseOrder())
                .limit(counts())
                .mapToLong(Long::longValue)
                .sum());
    }

    /** How many times it is made of, at most. */
    int counts() {
        return kind == ScoreKind.BEST ? 1 : bestOf;
    }

    /** The score rule of an event. */
    public static ScoreRule of(EventAdded event) {
        return new ScoreRule(event.scoreKind(), event.bestOf());
    }

    /** By how much {@link #countedMs} is divided to be shown. */
    public int divisor() {
        return kind == ScoreKind.MEAN ? bestOf : 1;
    }

    /** What is shown of {@link #countedMs}: a mean to the hundredth of a second, half up; the order is made before. */
    public long shownMs(long countedMs) {
        if (divisor() == 1) {
            return countedMs;
        }
        return BigDecimal.valueOf(countedMs)
                        .divide(BigDecimal.valueOf(divisor() * 10L), 0, RoundingMode.HALF_UP)
                        .longValueExact()
                * 10;
    }
}
