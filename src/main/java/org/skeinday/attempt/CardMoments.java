package org.skeinday.attempt;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * When attempts were, for their order: by their own times; a card without any stands right after the one before it of its
 * entry, else right before the one after it. Where none of the entry's has a time they stand where the last of them was
 * keyed in, or at noon (UTC) of their event's day where that was on another day.
 */
final class CardMoments {
    private static final long DAY_MS = 86_400_000;

    private final Map<String, TreeMap<Integer, Long>> timed = new HashMap<>();
    private final Map<String, Long> keyedIn = new HashMap<>();
    private final Map<String, String> days;

    /** @param days of events, as yyyy-mm-dd, by their id */
    CardMoments(List<AttemptImported> attempts, Map<String, String> days) {
        this.days = days;
        attempts.forEach(a -> {
            Long ms = own(a);
            if (ms != null) {
                timed.computeIfAbsent(a.entryId(), e -> new TreeMap<>()).put(a.number(), ms);
            }
            Long closed = a.closedAtMs();
            if (closed != null) {
                keyedIn.merge(a.entryId(), closed, Math::max);
            }
        });
    }

    /** Milliseconds since 1970 UTC; cards of one moment go by their number. */
    long of(AttemptImported attempt) {
        Long ms = own(attempt);
        if (ms != null) {
            return ms;
        }
        TreeMap<Integer, Long> ofEntry = timed.getOrDefault(attempt.entryId(), new TreeMap<>());
        var before = ofEntry.lowerEntry(attempt.number());
        if (before != null) {
            return before.getValue();
        }
        var after = ofEntry.higherEntry(attempt.number());
        return after != null ? after.getValue() : byTheDay(attempt);
    }

    private static @Nullable Long own(AttemptImported a) {
        return Stream.of(a.windingAtMs(), a.holdingAtMs(), a.releasedAtMs(), a.calledAtMs(), a.landedAtMs())
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    /** No card of the entry has a time: all stand at one moment, so that their numbers order them. */
    private long byTheDay(AttemptImported attempt) {
        long keyed = keyedIn.getOrDefault(attempt.entryId(), 0L);
        String day = days.get(attempt.eventId());
        if (day == null) {
            return keyed;
        }
        long noon = LocalDate.parse(day).atTime(12, 0).toInstant(ZoneOffset.UTC).toEpochMilli();
        return Math.abs(keyed - noon) <= DAY_MS ? keyed : noon;
    }
}
