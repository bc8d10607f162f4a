package org.skeinday.attempt;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.standing.FlightTally;
import org.skeinday.standing.FlightsRule;
import org.skeinday.standing.Scoring;

/**
 * Counts an entry's attempts as the rules do: which of theirs each one is. What was abandoned, what is flown again, and a short
 * flight that may be repeated use up none. What is not decided yet is taken to use up its own; if it does not, those after it
 * are counted anew.
 */
public final class AttemptCount {
    /**
     * What the count needs of one attempt.
     *
     * @param running within its entry, from 1
     * @param rule by which it was judged; null for the one that holds now
     */
    public record Tried(
            String id,
            int running,
            State state,
            @Nullable Long officialMs,
            @Nullable String voidReason,
            boolean flownAgain,
            @Nullable FlightsRule rule) {
        public static Tried of(AttemptNow now) {
            return new Tried(
                    now.id(),
                    now.number().running(),
                    now.state(),
                    now.officialMs(),
                    now.voidReason(),
                    now.flownAgain(),
                    now.verdict() == null ? null : now.verdict().rule());
        }
    }

    private final Map<String, AttemptNumber> byId = new HashMap<>();
    private final Map<Integer, Integer> tries = new HashMap<>();
    private final int most;
    private int called;
    private int used;

    private AttemptCount(int most) {
        this.most = most;
    }

    /**
     * @param own one entry's, in the order of their running numbers
     * @param limited whether the rules limit them: at practice they do not
     */
    public static AttemptCount of(List<Tried> own, Scoring scoring, boolean limited) {
        Map<String, FlightTally.Standing> standings = standings(own, scoring);
        var count = new AttemptCount(limited ? scoring.flights().flights() : Integer.MAX_VALUE);
        own.forEach(one -> count.take(one, standings.get(one.id())));
        return count;
    }

    private static Map<String, FlightTally.Standing> standings(List<Tried> own, Scoring scoring) {
        return scoring
                .tally(own.stream()
                        .flatMap(a -> OfficialFlights.of(
                                a.id(), a.state().word(), a.officialMs(), a.voidReason(), a.flownAgain())
                                .map(flight -> flight.by(a.rule()))
                                .stream())
                        .toList())
                .verdicts()
                .stream()
                .collect(Collectors.toMap(FlightTally.Verdict::id, FlightTally.Verdict::standing));
    }

    private void take(Tried one, FlightTally.@Nullable Standing standing) {
        called = Math.max(called, one.running() - 1);
        AttemptNumber number = next(mostFor(one));
        byId.put(one.id(), number);
        tries.merge(number.rule(), 1, Integer::sum);
        called = number.running();
        if (uses(one.state(), standing)) {
            used++;
        }
    }

    /** @param standing null for what is no flight, or not decided */
    private static boolean uses(State state, FlightTally.@Nullable Standing standing) {
        if (standing == null) {
            return state != State.SCRUBBED;
        }
        return switch (standing) {
            case OFFICIAL, USED_UP, BEYOND -> true;
            case ATTEMPT, VOID -> false;
        };
    }

    /** @throws NullPointerException for one that is none of the entry's */
    public AttemptNumber of(String attempt) {
        return Objects.requireNonNull(byId.get(attempt));
    }

    /** By the attempt's id. */
    public Map<String, AttemptNumber> byId() {
        return Map.copyOf(byId);
    }

    /** Of the one that is called next. */
    public AttemptNumber next() {
        return next(most);
    }

    /** One that is decided keeps its number where the rules allow fewer by now. */
    private int mostFor(Tried one) {
        FlightsRule then = one.rule();
        return then == null ? most : Math.max(most, then.flights());
    }

    private AttemptNumber next(int allowed) {
        int rule = Math.min(used + 1, allowed);
        return new AttemptNumber(called + 1, rule, tries.getOrDefault(rule, 0) + 1);
    }
}
