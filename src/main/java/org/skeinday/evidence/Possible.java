package org.skeinday.evidence;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What no motor holds and no meter shows, the same of a flight, a wind and a break. */
final class Possible {
    /** So many times its breaking turns no motor holds (own default). */
    static final double BEYOND = 2;
    /** 0.9 is 0.9 in every unit, but for a hair. */
    static final double HAIR = 1 + 1e-9;

    private Possible() {}

    /** @param told what was typed, to stand before the motor turns that it comes to; may be empty */
    static Optional<Doubted> turns(String told, double motorTurns, @Nullable Double breakingTurns) {
        return breakingTurns == null || motorTurns <= BEYOND * breakingTurns
                ? Optional.empty()
                : Optional.of(new Doubted(
                        Unlikely.TURNS_BEYOND_BREAKING,
                        told + Math.round(motorTurns) + " motor turns: such a motor breaks at about "
                                + Math.round(breakingTurns)));
    }

    static Optional<Doubted> offMeter(Unlikely why, @Nullable Double nmm, @Nullable MeterScale scale) {
        return nmm == null || scale == null || nmm <= scale.fullNmm() * HAIR
                ? Optional.empty()
                : Optional.of(new Doubted(
                        why,
                        "It lies beyond the torque meter, whose scale ends at " + scale.words()
                                + ": look at its unit"));
    }
}
