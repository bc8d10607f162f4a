package org.skeinday.attempt.action;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.ToldOfBreak;
import org.skeinday.platform.record.Decision;

/** Turns that no motor holds are asked about wherever they are said to have been on one, or to have come off it. */
final class TurnsDoubted {
    private TurnsDoubted() {}

    /**
     * What is asked; empty when nothing is.
     *
     * @param breakingTurns of the motor, null while not known: then nothing can be asked
     * @param insisted as {@link AskedOnce} has it
     * @param field of the form that they are typed in
     */
    static Optional<Decision> asked(
            @Nullable Double breakingTurns, double motorTurns, @Nullable String insisted, String field) {
        return AskedOnce.about(
                new ToldOfBreak(motorTurns, null, null, breakingTurns).doubts(), insisted, what -> field);
    }
}
