package org.skeinday.attempt;

import org.skeinday.units.Preconditions;

/**
 * Which attempt one is. People speak of the rules' attempts: one that is abandoned, or flown again, keeps its number for the
 * next try.
 *
 * @param running within its entry, in the order in which they were called, from 1: it never names two, and files and forms go
 *     by it
 * @param rule which attempt of the rules, from 1; where the rules limit them never above that limit
 * @param nth which try of that attempt, from 1
 */
public record AttemptNumber(int running, int rule, int nth) {
    public AttemptNumber {
        Preconditions.within("The running number of an attempt", running, 1, 10_000);
        Preconditions.within("The rules' number of an attempt", rule, 1, running);
        Preconditions.within("The number of a try", nth, 1, running);
    }

    /** Where every attempt is tried once. */
    public static AttemptNumber plain(int number) {
        return new AttemptNumber(number, number, 1);
    }

    /** Of the one after it, where this one uses up its attempt of the rules. */
    public AttemptNumber following() {
        return new AttemptNumber(running + 1, rule + 1, 1);
    }

    /** For example {@code attempt 2}, or {@code attempt 2, 2nd try}. */
    public String words() {
        return "attempt " + rule + (isRepeat() ? ", " + nthTry() : "");
    }

    /** For example {@code 2nd try}. */
    public String nthTry() {
        return PhaseWords.ordinal(nth) + " try";
    }

    /** Whether the same attempt of the rules was tried before. */
    public boolean isRepeat() {
        return nth > 1;
    }
}
