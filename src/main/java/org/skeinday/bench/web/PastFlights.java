package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;

/** The day's last flights of own entries, with what is still to be told of each. */
final class PastFlights {
    private PastFlights() {}

    /** @param but the one that is shown already */
    static List<WindingView.Past> of(Tx tx, int most, String but) {
        boolean quiet = AttemptStore.quietNow(tx).isPresent();
        return EventStore.next(tx).stream()
                .flatMap(event -> FlownStore.ofEvent(tx, event.id()).stream())
                .filter(f -> f.motorId() != null && !f.id().equals(but))
                .limit(most)
                .map(f -> past(tx, f, quiet))
                .toList();
    }

    private static WindingView.Past past(Tx tx, Flight flight, boolean quiet) {
        AttemptNow attempt = AttemptStore.find(tx, flight.id()).orElseThrow();
        String entry =
                EntryStore.find(tx, attempt.entryId()).map(EntryAdded::name).orElse("");
        return new WindingView.Past(flight.id(), entry + ", " + attempt.number().words(), lacks(flight, quiet));
    }

    /** @param quiet whether nobody may be helped: then it is not told what others have marked */
    private static String lacks(Flight flight, boolean quiet) {
        List<String> lacks = new ArrayList<>();
        if (flight.stopCrankTurns() == null) {
            lacks.add("turns of its wind");
        }
        if (flight.remainingCrankTurns() == null) {
            lacks.add("turns left");
        }
        if (!quiet && flight.counts().isUndecided()) {
            lacks.add("whether it counts");
        }
        return String.join(", ", lacks);
    }
}
