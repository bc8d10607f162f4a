package org.skeinday.bench.web;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.PacedTurns;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPaced;
import org.skeinday.winding.store.WindStore;

/**
 * The counts that the form after a wind shows before anybody typed one.
 *
 * @param lead what they are, in words
 */
record PlannedCounts(@Nullable Integer atFull, @Nullable Integer stop, String lead) {
    static PlannedCounts of(Tx tx, Wind done) {
        @Nullable Integer atFull = done.begun().atFullCrankTurns();
        if (done.broke().isPresent()) {
            return new PlannedCounts(
                    null, null, "How many crank turns were on when it broke? They say what this batch stands.");
        }
        Optional<WindPaced> pace = WindStore.paced(tx, done.begun().id());
        if (pace.isPresent()) {
            PacedTurns beats = PacedTurns.of(done, pace.get().beats());
            return new PlannedCounts(beats.atFull(), beats.stop(), paced(pace.get()));
        }
        @Nullable Integer stop = done.begun().targetCrankTurns();
        return new PlannedCounts(
                atFull,
                stop,
                flight(tx, done.begun().attemptId())
                        + (stop == null && atFull == null
                                ? "How many crank turns did this wind have?"
                                : "The crank turns of this wind, as planned unless you say otherwise:"));
    }

    /** Where the flight stands, as a sentence; empty for a motor that is wound without one. */
    private static String flight(Tx tx, @Nullable String attempt) {
        return Optional.ofNullable(attempt)
                .flatMap(id -> AttemptStore.find(tx, id))
                .map(now -> switch (now.state()) {
                    case RELEASED -> "The flight is on its way. ";
                    case LANDED -> "It has landed. ";
                    case CLOSED -> "The flight is official. ";
                    case VOID -> "The flight is void. ";
                    default -> "";
                })
                .orElse("");
    }

    private static String paced(WindPaced pace) {
        return "As many crank turns as the metronome beat, " + pace.crankTurnsPerMinute()
                + " a minute. They are kept out of every fit:";
    }
}
