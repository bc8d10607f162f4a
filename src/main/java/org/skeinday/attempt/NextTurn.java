package org.skeinday.attempt;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Whose attempt comes next. Our own come as the plan in force has them. Else one whose window is open comes before one whose
 * window opens later, unless that one opens before an attempt of the first could be over, and closes earlier.
 */
public final class NextTurn {
    /** From the preparation to the landing, as parts take where nothing is known yet. */
    static final long ATTEMPT_MS = Stream.of(Part.PREPARE, Part.WIND, Part.LOAD, Part.FLY)
                    .mapToLong(Part::defaultSeconds)
                    .sum()
            * 1000;

    private final Comparator<Turn> alike;
    private final long nowMs;

    /**
     * An entry that may fly. Moments are ms since 1970 UTC.
     *
     * @param opensMs of its window, null for none: then it may fly at any time
     * @param closesMs of its window, null for none
     * @param plannedMs when the plan in force has its winding begin, null where no plan names it
     */
    public record Turn(
            String entry,
            @Nullable Long opensMs,
            @Nullable Long closesMs,
            @Nullable Long plannedMs) {
        private long opens() {
            return opensMs == null ? Long.MIN_VALUE : opensMs;
        }

        private long closes() {
            return closesMs == null ? Long.MAX_VALUE : closesMs;
        }
    }

    /** @param alike order of those whose windows do not tell them apart */
    public NextTurn(Comparator<Turn> alike, long nowMs) {
        this.alike = Comparator.comparingLong(Turn::closes).thenComparing(alike);
        this.nowMs = nowMs;
    }

    /** Empty where nobody may fly. */
    public Optional<Turn> of(Collection<Turn> turns) {
        return turns.stream().sorted(alike).reduce((first, other) -> goesBefore(other, first) ? other : first);
    }

    private boolean goesBefore(Turn one, Turn other) {
        Long planned = one.plannedMs();
        Long otherPlanned = other.plannedMs();
        if (planned != null && otherPlanned != null) {
            return planned < otherPlanned;
        }
        if (planned != null && Math.max(planned, nowMs) < other.opens()) {
            return true;
        }
        if (otherPlanned != null && Math.max(otherPlanned, nowMs) < one.opens()) {
            return false;
        }
        return byWindow(one, other);
    }

    private boolean byWindow(Turn one, Turn other) {
        boolean open = one.opens() <= nowMs;
        if (open == other.opens() <= nowMs) {
            return alike.compare(one, other) < 0;
        }
        return open ? !cutsIn(other, one) : cutsIn(one, other);
    }

    /** Whether one that opens later must not wait for the open one. */
    private boolean cutsIn(Turn later, Turn open) {
        return later.opens() < nowMs + ATTEMPT_MS && later.closes() < open.closes();
    }
}
