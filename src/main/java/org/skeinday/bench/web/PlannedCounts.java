package org.skeinday.bench.web;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.PacedTurns;
import org.skeinday.winding.ToldTurns;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPaced;
import org.skeinday.winding.store.WindStore;

/**
 * The counts that the form after a wind shows before anybody typed one: as planned only where nothing says that the wind
 * ended early, else what marks and keys told.
 *
 * @param lead what they are, in words
 * @param early whether the wind ended before what was planned: then no key confirms anything unread
 */
record PlannedCounts(@Nullable Integer atFull, @Nullable Integer stop, String lead, boolean early) {
    /** Whether one key may confirm them unread: nothing says that the wind ended early, and something tells how it ended. */
    boolean asPlanned() {
        return !early && stop != null;
    }

    static PlannedCounts of(Tx tx, Wind done) {
        if (done.broke().isPresent()) {
            return new PlannedCounts(
                    null, null, "How many crank turns were on when it broke? They say what this batch stands.", true);
        }
        Optional<WindPaced> pace = WindStore.paced(tx, done.begun().id());
        if (pace.isPresent()) {
            PacedTurns beats = PacedTurns.of(done, pace.get().beats());
            return new PlannedCounts(beats.atFull(), beats.stop(), paced(pace.get()), false);
        }
        ToldTurns told = ToldTurns.of(done);
        String lead = told.isEarly() ? early(told) : planned(told);
        return new PlannedCounts(
                told.atFull(), told.stop(), flight(tx, done.begun().attemptId()) + lead, told.isEarly());
    }

    private static String planned(ToldTurns told) {
        return told.stop() == null && told.atFull() == null
                ? "How many crank turns did this wind have?"
                : "The crank turns of this wind, as planned unless you say otherwise:";
    }

    private static String early(ToldTurns told) {
        return told.early()
                + (told.stop() == null
                        ? ": how many crank turns were on?"
                        : ": about " + told.stop() + " crank turns by the pace. How many were on?");
    }

    /** Where the flight stands, as a sentence; empty for a motor that is wound without one. */
    private static String flight(Tx tx, @Nullable String attempt) {
        return Optional.ofNullable(attempt)
                .flatMap(id -> LiveAttempts.find(tx, id))
                .map(live -> switch (live.phase().name()) {
                    case IN_THE_AIR -> "The flight is on its way. ";
                    case LANDED -> "It has landed. ";
                    case OFFICIAL -> "The flight is official. ";
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
