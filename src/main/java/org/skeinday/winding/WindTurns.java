package org.skeinday.winding;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.ToldOfFlight;
import org.skeinday.evidence.Usual;

/** The turns of a wind: what somebody counted, and between the counts what follows from them. */
public record WindTurns(Wind wind) {
    /** Crank turns in the motor; empty until there are counts, or a plan and the first step in. */
    public Optional<Count> at(long elapsedMs) {
        return line().map(line -> line.at(elapsedMs));
    }

    Optional<TurnLine> line() {
        return TurnLine.of(wind.begun(), wind.times(), wind.counted());
    }

    /** Motor turns: (stop − back-off) · ratio, from the counts only; empty while one of the two is not entered, or when it broke. */
    public Optional<Double> atLaunch() {
        WindCounted counted = wind.counted();
        Double off = counted == null ? null : counted.backOffCrankTurns();
        return counted == null || off == null || wind.broke().isPresent()
                ? Optional.empty()
                : Optional.of((counted.stopCrankTurns() - off) * wind.begun().ratio());
    }

    /** Motor turns in it when it broke, above 0; empty when it did not, or its turns are not counted yet. */
    public Optional<Double> atBreak() {
        return wind.broke().isPresent() ? Optional.ofNullable(wind.counted()).flatMap(this::left) : Optional.empty();
    }

    private Optional<Double> left(WindCounted turns) {
        double off = turns.backOffCrankTurns() == null ? 0 : turns.backOffCrankTurns();
        return Optional.of((turns.stopCrankTurns() - off) * wind.begun().ratio())
                .filter(t -> t > 0);
    }

    /** What may be asked about its count. @param breakingTurns motor turns at which such a motor breaks, null for unknown */
    public ToldOfFlight told(@Nullable Double breakingTurns) {
        WindCounted counted = wind.counted();
        return new ToldOfFlight(
                counted == null ? null : (Double) (double) counted.stopCrankTurns(),
                counted == null ? null : counted.backOffCrankTurns(),
                null,
                wind.begun().ratio(),
                null,
                null,
                null,
                null,
                breakingTurns,
                Usual.UNKNOWN);
    }
}
