package org.skeinday.attempt;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarks;

/**
 * Which time an attempt has, and where that came from where nobody said it: its readings tell whether it was tapped.
 *
 * @param officialMs null before there is one
 * @param announced whether the officials elsewhere announce it, whatever our own watches have
 * @param fromPaper whether it was keyed in from a card
 * @param readings as they came in, without those that were taken back
 */
public record TimedBy(@Nullable Long officialMs, boolean announced, boolean fromPaper, List<ReadingTaken> readings) {
    /** The official time, else that of our own first watch, in ms; null where there is neither. */
    public @Nullable Long timeMs() {
        return officialMs != null
                ? officialMs
                : first().map(ReadingTaken::durationMs).orElse(null);
    }

    /** The marks of its numbers, its time tapped where it rests on this program's watches alone and nobody said more of it. */
    public ValueMarks marked(ValueMarks said) {
        Long ms = timeMs();
        return ms != null && isTapped() ? said.cameAs(Measured.TIME, ms.doubleValue(), Source.TAP) : said;
    }

    private boolean isTapped() {
        return officialMs == null
                ? first().filter(ReadingTaken::wasTapped).isPresent()
                : !announced && !fromPaper && allTapped();
    }

    private Optional<ReadingTaken> first() {
        return Readings.thatCount(readings).stream().findFirst();
    }

    private boolean allTapped() {
        List<ReadingTaken> counted = Readings.thatCount(readings);
        return !counted.isEmpty() && counted.stream().allMatch(ReadingTaken::wasTapped);
    }
}
