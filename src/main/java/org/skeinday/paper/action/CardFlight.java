package org.skeinday.paper.action;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.Measured;
import org.skeinday.exchange.DayFiles;
import org.skeinday.paper.CardOrder;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Decision;

/** The flight that a card tells: its unlikely numbers are asked about while the card is still in somebody's hand. */
final class CardFlight {
    private CardFlight() {}

    /** What is asked before the card is taken; empty when nothing is. @param insisted as the form sent it, null for none */
    static Optional<Decision> asked(Tx tx, EventAdded event, DayFiles.Read read, @Nullable String insisted) {
        AttemptImported card = KeyIn.imported(read);
        Flight before = FlownStore.find(tx, card.id()).orElse(null);
        double ratio = FlownStore.ratio(tx, card.id()).orElse(event.winderRatio());
        return AskedOnce.about(tx, told(read, ratio), before, insisted, CardFlight::field);
    }

    private static AttemptNoted noted(DayFiles.Read read) {
        return read.facts().stream()
                .map(DayFiles.Named::body)
                .filter(AttemptNoted.class::isInstance)
                .map(AttemptNoted.class::cast)
                .findFirst()
                .orElseGet(() -> AttemptNoted.blank("none"));
    }

    /** @param ratio motor turns to one crank turn */
    static Flight told(DayFiles.Read read, double ratio) {
        AttemptImported card = KeyIn.imported(read);
        AttemptNoted noted = noted(read);
        Integer stop = card.stopCountCrankTurns();
        return new Flight(
                card.id(),
                true,
                card.modelId(),
                card.motorId(),
                0,
                ratio,
                stop == null ? null : (Double) stop.doubleValue(),
                noted.backOffCrankTurns(),
                noted.remainingCrankTurns(),
                noted.peakTorqueNmm(),
                card.launchTorqueNmm(),
                card.officialMs(),
                FlightEvidence.good());
    }

    private static String field(Measured what) {
        return switch (what) {
            case CRANK_TURNS, AT_FULL, FLIGHT -> "stop-count";
            case PEAK_TORQUE -> "peak-torque";
            case LAUNCH_TORQUE -> "launch-torque";
            case BACK_OFF -> "back-off";
            case REMAINING -> "remaining";
            case TIME -> CardOrder.nameOfWatch(1);
        };
    }
}
