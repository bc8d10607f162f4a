package org.skeinday.attempt;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.standing.DecidedFlight;
import org.skeinday.standing.FlightTally;
import org.skeinday.standing.Scoring;

/** What an entry's attempts are as flights of the contest. */
public final class OfficialFlights {
    private OfficialFlights() {}

    /** Those that are decided, in the order flown; a scrubbed attempt is no flight. */
    public static List<DecidedFlight> of(List<AttemptNow> own) {
        return own.stream()
                .sorted(Comparator.comparingInt((AttemptNow a) -> a.number().running()))
                .flatMap(attempt -> flown(attempt).stream())
                .toList();
    }

    private static Optional<DecidedFlight> flown(AttemptNow attempt) {
        AttemptVerdict verdict = attempt.verdict();
        return of(
                        attempt.id(),
                        attempt.state().word(),
                        attempt.officialMs(),
                        attempt.voidReason(),
                        attempt.flownAgain())
                .map(flight -> flight.by(verdict == null ? null : verdict.rule()));
    }

    /**
     * One attempt as a flight; empty when it is none, or not decided yet.
     *
     * @param state a word of {@link State}
     * @param flownAgain whether it was given up to be flown again, which uses up nothing
     */
    public static Optional<DecidedFlight> of(
            String id,
            String state,
            @org.jspecify.annotations.Nullable Long officialMs,
            @org.jspecify.annotations.Nullable String reason,
            boolean flownAgain) {
        String why = reason == null || reason.isBlank() ? "given up" : reason;
        return switch (State.of(state)) {
            case CLOSED -> Optional.of(new DecidedFlight(id, officialMs == null ? 0 : officialMs));
            case VOID -> Optional.of(flownAgain ? new DecidedFlight(id, 0, why) : DecidedFlight.withoutTime(id, why));
            default -> Optional.empty();
        };
    }

    public static FlightTally tally(List<AttemptNow> own, Scoring scoring) {
        return scoring.tally(of(own));
    }

    /** Flights that are still to be called: those that the rules leave, without those that are under way. */
    public static int toCome(List<AttemptNow> own, Scoring scoring) {
        long underWay = own.stream()
                .filter(attempt -> attempt.state().isOpen())
                .map(attempt -> attempt.number().rule())
                .distinct()
                .count();
        return Math.max(0, tally(own, scoring).flightsLeft() - (int) underWay);
    }
}
