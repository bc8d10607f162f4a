package org.skeinday.attempt;

import java.util.Comparator;
import java.util.List;
import org.skeinday.units.Preconditions;

/** Which motor for the next attempt: all of them ranked, each with the reason for its place. */
public final class MotorChoice {
    /** Added to the rank of one that cannot be wound at once. */
    private static final int WAITS = 3;

    private static final int UNFIT = 6;

    private MotorChoice() {}

    /**
     * A motor that could be taken.
     *
     * @param directionFits that of the model's rotor
     * @param notReady why it cannot be wound now, for example "gritty"; empty when it can
     * @param waits what it still waits for, for example "resting"; empty when it can be wound at once
     * @param uses windings beyond half of its breaking turns so far
     * @param retireAfter uses before it is retired from official attempts
     */
    public record Candidate(
            String motorId,
            boolean directionFits,
            String notReady,
            String waits,
            int uses,
            int retireAfter,
            FlightForecast forecast) {
        public Candidate {
            Preconditions.zeroOrMore("Uses", uses);
            Preconditions.atLeast("The uses at which a motor retires", retireAfter, 1);
        }
    }

    /** @param fit whether it may be taken at all */
    public record Ranked(String motorId, boolean fit, String reason) {}

    private record Judged(Ranked ranked, int rank, double seconds, int uses) {}

    /**
     * Fit ones first, those that wait for nothing before the others: longest expected flight, then without forecast those
     * used before, the least used first, then fresh ones.
     */
    public static List<Ranked> rank(List<Candidate> candidates) {
        return candidates.stream()
                .map(MotorChoice::judge)
                .sorted(Comparator.comparingInt(Judged::rank)
                        .thenComparing(
                                Comparator.comparingDouble(Judged::seconds).reversed())
                        .thenComparingInt(Judged::uses))
                .map(Judged::ranked)
                .toList();
    }

    private static Judged judge(Candidate c) {
        if (!c.directionFits()) {
            return unfit(c, "wound the other way than this rotor turns");
        }
        if (!c.notReady().isBlank()) {
            return unfit(c, c.notReady());
        }
        if (c.uses() >= c.retireAfter()) {
            return unfit(c, "used " + c.uses() + " times: retired from official attempts after " + c.retireAfter());
        }
        if (c.forecast() instanceof FlightForecast.Expected said) {
            return fit(
                    c,
                    0,
                    said.seconds(),
                    "expected " + Math.round(said.seconds()) + " s from " + said.flights() + " " + said.basis());
        }
        return c.uses() == 0
                ? fit(c, 2, 0, "fresh: the first flight of a motor is usually shorter")
                : fit(c, 1, 0, "used " + c.uses() + " of " + c.retireAfter() + " times, no forecast yet");
    }

    private static Judged fit(Candidate c, int rank, double seconds, String reason) {
        boolean ready = c.waits().isBlank();
        return new Judged(
                new Ranked(c.motorId(), true, ready ? reason : c.waits() + "; " + reason),
                ready ? rank : rank + WAITS,
                seconds,
                c.uses());
    }

    private static Judged unfit(Candidate c, String reason) {
        return new Judged(new Ranked(c.motorId(), false, reason), UNFIT, 0, c.uses());
    }
}
