package org.skeinday.bench.action;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.WinderOutput;
import org.skeinday.contest.store.StationStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Which way a winder's hook turns for its crank, as somebody saw it over one marked turn: kept with the winder. */
public final class WatchHook {
    private static final Set<String> TOPICS = Set.of("contest", "places", "winds", "attempts");

    private WatchHook() {}

    /** @param station id of the winding place that the page showed @param turns a word of {@link WinderOutput} */
    record Seen(String station, @Nullable String turns) {}

    public static List<ActKind<?>> kinds() {
        return List.of(new ActKind<>("station.output", Seen.class, WatchHook::decide));
    }

    static Decision decide(Tx tx, ActContext context, Seen seen) {
        StationAdded station = StationStore.all(tx).stream()
                .filter(one -> one.id().equals(seen.station()))
                .findFirst()
                .orElse(null);
        if (station == null) {
            return Decision.unknown("There is no such winding place any more; look again");
        }
        try {
            WinderOutput turns = WinderOutput.of(String.valueOf(seen.turns()));
            String day = context.today().toString();
            return Decision.decided(
                    TOPICS, Fact.of("station.changed", station.outputSeen(turns, day, context.personOrNull())));
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage()));
        }
    }
}
