package org.skeinday.review;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the flights say to one question. It says what went together, never what caused it.
 *
 * @param about the model, batch, step, and so on
 * @param sentence for the page, with its full stop; begins with "No evidence yet" where there is none
 * @param n values it rests on: flights, motors, holds
 * @param flights ids of the flights (or winds) behind it, for links
 * @param estimate null when there were too few
 * @param unit of the estimate, empty for a ratio
 */
public record Finding(
        Kind kind,
        String about,
        String sentence,
        int n,
        List<String> flights,
        @Nullable Effect estimate,
        String unit,
        Strength strength) {
    /** What was asked. */
    public enum Kind {
        BATCH_STIFFNESS,
        FIRST_USE,
        LAUNCH_TORQUE,
        HOLDING,
        HOLD_BLEED,
        METERS,
        NEXT_MOTOR,
        LOST_TIME,
        TEMPERATURE
    }

    /** How sure it is, after the guard against chance. */
    public enum Strength {
        CLEAR,
        LIKELY,
        NO_EVIDENCE_YET;

        /** Of a hundred evenings without any effect, ten may show a finding, and one a clear one. */
        static final double LIKELY_UP_TO = 0.10;

        static final double CLEAR_UP_TO = 0.01;

        static Strength of(double adjusted) {
            return adjusted <= CLEAR_UP_TO ? CLEAR : adjusted <= LIKELY_UP_TO ? LIKELY : NO_EVIDENCE_YET;
        }
    }

    public Finding {
        flights = List.copyOf(flights);
    }

    public boolean isEvidence() {
        return strength != Strength.NO_EVIDENCE_YET;
    }
}
