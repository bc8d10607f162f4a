package org.skeinday.attempt;

import java.math.BigInteger;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.skeinday.timing.OfficialTime;
import org.skeinday.timing.TimeRule;
import org.skeinday.units.FlightTime;

/**
 * The official time that stands: what the watches made, or the jury said in their place, less what was deducted. Exact; what
 * is left of a share is rounded as the rules round.
 *
 * @param ms zero or more
 * @param how a sentence with the watches and each decision that holds
 */
public record StandingTime(long ms, String how) {
    private static final BigInteger ALL = BigInteger.valueOf(1000);

    /**
     * @param watches what the watches made when the time was accepted
     * @param decisions since then, the first one first
     */
    public static StandingTime of(OfficialTime watches, List<TimeDecided> decisions, TimeRule rule) {
        List<TimeDecided> holding = holding(decisions);
        StandingTime stands = base(watches, holding, rule);
        for (TimeDecided decision : holding) {
            if (decision.is(TimeDecided.Kind.DEDUCTION)) {
                long left = less(stands.ms, decision, rule);
                stands = stands.and(
                        left,
                        deducted(decision, rule) + " (" + decision.reason() + "): "
                                + new FlightTime(left).text(rule.decimals()));
            }
        }
        return new StandingTime(stands.ms, AttemptClosed.cut(stands.how));
    }

    /** The jury's last time goes before the watches', whatever the rules make of these. */
    private static StandingTime base(OfficialTime watches, List<TimeDecided> holding, TimeRule rule) {
        StandingTime stands = new StandingTime(watches.millis(), watches.how());
        for (TimeDecided decision : holding) {
            if (decision.is(TimeDecided.Kind.RULES)) {
                stands = new StandingTime(
                        Objects.requireNonNull(decision.ms()), Objects.requireNonNullElse(decision.watches(), ""));
            }
        }
        for (TimeDecided decision : holding) {
            if (decision.is(TimeDecided.Kind.JURY)) {
                long ms = Objects.requireNonNull(decision.ms());
                stands = stands.and(
                        ms, "by the jury " + new FlightTime(ms).text(rule.decimals()) + " (" + decision.reason() + ")");
            }
        }
        return stands;
    }

    private StandingTime and(long nowMs, String more) {
        return new StandingTime(nowMs, how.isEmpty() ? more : how + "; " + more);
    }

    /** Those that nothing has undone. */
    public static List<TimeDecided> holding(List<TimeDecided> decisions) {
        Set<String> undone = decisions.stream()
                .map(TimeDecided::undoes)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        return decisions.stream()
                .filter(d -> !d.is(TimeDecided.Kind.UNDO) && !undone.contains(d.id()))
                .toList();
    }

    private static long less(long ms, TimeDecided decision, TimeRule rule) {
        Integer share = decision.perMille();
        if (share == null) {
            return Math.max(0, ms - Objects.requireNonNull(decision.ms()));
        }
        BigInteger left = BigInteger.valueOf(ms).multiply(BigInteger.valueOf(ALL.longValueExact() - share));
        return rule.rounding().round(left, ALL, rule.stepMs());
    }

    /** For example {@code less 5.0 s}. */
    private static String deducted(TimeDecided decision, TimeRule rule) {
        Integer share = decision.perMille();
        return share == null
                ? "less " + new FlightTime(Objects.requireNonNull(decision.ms())).seconds(rule.decimals()) + " s"
                : "less " + (share % 10 == 0 ? String.valueOf(share / 10) : share / 10 + "." + share % 10) + " %";
    }
}
