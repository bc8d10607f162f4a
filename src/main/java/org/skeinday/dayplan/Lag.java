package org.skeinday.dayplan;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * How long after the start of one task another starts; negative when it may start before.
 *
 * @param id by which it is named when it conflicts
 * @param min no sooner; null for no bound
 * @param max no later; null for no bound
 * @param weight 0: it must hold. Up to 10,000: a preference, each step too soon or too late costs so much
 */
public record Lag(
        String id,
        String from,
        String to,
        @Nullable Long min,
        @Nullable Long max,
        long weight) {
    public Lag {
        Preconditions.named("A lag", id);
        PlanTime.time("The least lag of " + id, min);
        PlanTime.time("The most lag of " + id, max);
        Preconditions.within("The weight of " + id, weight, 0, 10_000);
        if (from.equals(to)) {
            throw new IllegalArgumentException("A lag must join two different tasks, but both were " + from);
        }
        if (weight > 0 && min != null && max != null && min > max) {
            throw new IllegalArgumentException("A preferred lag must have a least of no more than its most, but " + id
                    + " has " + min + " and " + max);
        }
    }

    /** Must hold. */
    public static Lag between(String from, String to, @Nullable Long min, @Nullable Long max) {
        return new Lag(from + "->" + to, from, to, min, max, 0);
    }

    /** Is liked, by weight. */
    public static Lag preferred(String from, String to, @Nullable Long min, @Nullable Long max, long weight) {
        return new Lag(from + "~>" + to, from, to, min, max, weight);
    }

    public boolean isHard() {
        return weight == 0;
    }

    Lag bounded(@Nullable Long least, @Nullable Long most) {
        return new Lag(id, from, to, least, most, weight);
    }

    /** Steps too soon or too late when the starts lie so far apart; 0 when it holds. */
    long missed(long apart) {
        long soon = min == null ? 0 : Math.max(0, min - apart);
        long late = max == null ? 0 : Math.max(0, apart - max);
        return soon + late;
    }
}
