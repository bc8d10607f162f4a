package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Which motors are whose for the next attempts of a team's entries, so that none is offered to two of them: what is planned
 * stays, then each entry in its turn gets its best one, then each its spare, then what is left is dealt out. An entry whose
 * attempt is under way has its motor and waits for the others to have theirs.
 */
public final class MotorShares {
    /** The motor and the spare: what an entry needs. */
    public static final int NEEDED = 2;

    private final List<Asks> asks;

    /** By entry; shorter where the team has no more. */
    private final Map<String, List<String>> of = new HashMap<>();

    private final Set<String> taken = new HashSet<>();

    /**
     * @param underWay whether an attempt of it has a motor in hand, which is not among the ranked ones
     * @param planned motor of its next attempt by the plan in force, null for none
     * @param ranked motors that it may fly with now, the best first
     */
    public record Asks(
            String entry, boolean underWay, @Nullable String planned, List<String> ranked) {
        public Asks {
            ranked = List.copyOf(ranked);
        }
    }

    /** @param asks in the order in which the entries fly */
    public MotorShares(List<Asks> asks) {
        this.asks = List.copyOf(asks);
        List<Asks> waiting = asks.stream().filter(entry -> !entry.underWay()).toList();
        waiting.forEach(this::takePlanned);
        deal(waiting, 1);
        asks.stream().filter(Asks::underWay).forEach(this::takePlanned);
        int most = asks.stream().mapToInt(entry -> entry.ranked().size()).max().orElse(0);
        for (int round = NEEDED; round <= most + 1; round++) {
            deal(asks, round);
        }
    }

    private void takePlanned(Asks entry) {
        String planned = entry.planned();
        if (planned != null && entry.ranked().contains(planned) && !taken.contains(planned)) {
            take(entry, planned);
        }
    }

    /** One more for each that has fewer than so many, the one in hand counted. */
    private void deal(List<Asks> entries, int most) {
        for (Asks entry : entries) {
            if (of(entry.entry()).size() + (entry.underWay() ? 1 : 0) < most) {
                entry.ranked().stream()
                        .filter(motor -> !taken.contains(motor))
                        .findFirst()
                        .ifPresent(motor -> take(entry, motor));
            }
        }
    }

    private void take(Asks entry, String motor) {
        taken.add(motor);
        of.computeIfAbsent(entry.entry(), id -> new ArrayList<>()).add(motor);
    }

    /** All that is an entry's own: the motor of its next attempt, the spare, further ones; none of another entry. */
    public List<String> of(String entry) {
        return List.copyOf(of.getOrDefault(entry, List.of()));
    }

    /** The other entry that needs this motor as its next one or its spare. */
    public Optional<String> neededBy(String motor, String notThis) {
        return asks.stream()
                .map(Asks::entry)
                .filter(entry -> !entry.equals(notThis))
                .filter(entry -> of(entry).stream().limit(NEEDED).anyMatch(motor::equals))
                .findFirst();
    }

    /** Whether the plan in force has it for the next attempt of another entry, which got it. */
    public boolean isPlannedFor(String motor, String notThis) {
        return asks.stream()
                .filter(other -> !other.entry().equals(notThis) && motor.equals(other.planned()))
                .anyMatch(other -> of(other.entry()).contains(motor));
    }

    /** Its own, then those that nobody needs, then those that others need, each part in the order in which it was. */
    public Comparator<String> order(String entry) {
        List<String> own = of(entry);
        return Comparator.comparingInt(motor -> own.contains(motor)
                ? own.indexOf(motor)
                : own.size() + (neededBy(motor, entry).isPresent() ? 1 : 0));
    }
}
