package org.skeinday.standing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.skeinday.contest.FlightRules;
import org.skeinday.units.FlightTime;

/**
 * What an entry's flights come to so far.
 *
 * @param verdicts one for each flight, in the order flown
 * @param flightsLeft official flights still to make
 * @param repeatsLeft short flights that may still be repeated before the next official one
 * @param repeatable the flight that may be flown again next, empty when the last one was not too short
 */
public record FlightTally(List<Verdict> verdicts, int flightsLeft, int repeatsLeft, Optional<String> repeatable) {
    /** What a flight is. */
    public enum Standing {
        OFFICIAL,
        /** Too short, may be repeated: not official. */
        ATTEMPT,
        /** Too short with no repeat left: an official flight without a time. */
        USED_UP,
        VOID,
        /** Flown after all official flights. */
        BEYOND
    }

    /**
     * One flight.
     *
     * @param reason in words
     */
    public record Verdict(String id, long officialMs, Standing standing, String reason) {}

    public FlightTally {
        verdicts = List.copyOf(verdicts);
    }

    /** Times that the score is made of, in ms, in the order flown. */
    public List<Long> officialMs() {
        return verdicts.stream()
                .filter(v -> v.standing() == Standing.OFFICIAL)
                .map(Verdict::officialMs)
                .toList();
    }

    /** @param rule that holds now: what is left is counted by it, a flight by the one it was judged by */
    public static FlightTally of(List<DecidedFlight> flown, FlightsRule rule) {
        List<Verdict> verdicts = new ArrayList<>();
        int official = 0;
        int here = 0; // repeats used for the official flight that is next
        int inAll = 0;
        Optional<String> repeatable = Optional.empty();
        for (DecidedFlight flight : flown) {
            FlightsRule then = flight.rule() == null ? rule : flight.rule();
            Verdict verdict = verdict(flight, then, official + 1, left(then, here, inAll));
            verdicts.add(verdict);
            switch (verdict.standing()) {
                case ATTEMPT -> {
                    here++;
                    inAll++;
                    repeatable = Optional.of(flight.id());
                }
                case OFFICIAL, USED_UP -> {
                    official++;
                    here = 0;
                    repeatable = Optional.empty();
                }
                case VOID, BEYOND -> {} // neither a flight nor a repeat is used
            }
        }
        int flightsLeft = Math.max(0, rule.flights() - official);
        return new FlightTally(verdicts, flightsLeft, flightsLeft == 0 ? 0 : left(rule, here, inAll), repeatable);
    }

    private static int left(FlightsRule rule, int here, int inAll) {
        return Math.max(0, Math.min(rule.repeatsPerFlight() - here, rule.repeatsInAll() - inAll));
    }

    private static Verdict verdict(DecidedFlight flight, FlightsRule rule, int number, int repeats) {
        if (!flight.voidReason().isBlank() && !flight.withoutTime()) {
            return said(flight, Standing.VOID, "void: " + flight.voidReason());
        }
        if (number > rule.flights()) {
            return said(flight, Standing.BEYOND, "all " + rule.flights() + " official flights were made before");
        }
        String nth = "official flight " + number + " of " + rule.flights();
        if (flight.withoutTime()) {
            return new Verdict(flight.id(), 0, Standing.USED_UP, nth + ", without a time: " + flight.voidReason());
        }
        if (flight.officialMs() >= rule.minimumMs()) {
            return said(flight, Standing.OFFICIAL, nth);
        }
        String tooShort = "below " + new FlightTime(rule.minimumMs()).text(0);
        if (repeats > 0) {
            return said(flight, Standing.ATTEMPT, tooShort + ": not official, may be repeated");
        }
        return rule.ifShortAgain() == FlightRules.IfShort.COUNTS
                ? said(flight, Standing.OFFICIAL, tooShort + ", no repeat left: " + nth)
                : said(flight, Standing.USED_UP, tooShort + ", no repeat left: " + nth + ", without a time");
    }

    private static Verdict said(DecidedFlight flight, Standing standing, String reason) {
        return new Verdict(
                flight.id(),
                flight.officialMs(),
                standing,
                new FlightTime(flight.officialMs()).text(2) + ", " + reason);
    }
}
