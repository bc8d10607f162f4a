package org.skeinday.exchange.action;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlightStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.exchange.Day;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.InspectionStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.store.ListStore;

/** Reads everything that files can carry, in one snapshot. */
public final class ReadDay {
    private ReadDay() {}

    /** @param people person id to display name, as kept beside the record */
    public static Day all(Tx tx, Map<String, String> people) {
        List<EntryAdded> entries = new ArrayList<>();
        List<WindowAdded> windows = new ArrayList<>();
        List<EventAdded> events = EventStore.all(tx);
        List<AttemptImported> attempts = AttemptStore.asImported(tx);
        List<WatchTaken> watches = new ArrayList<>();
        List<ReadingTaken> readings = new ArrayList<>();
        for (EventAdded event : events) {
            entries.addAll(EntryStore.ofEvent(tx, event.id()));
            windows.addAll(WindowStore.ofEvent(tx, event.id()));
        }
        for (AttemptImported attempt : attempts) {
            watches.addAll(WatchStore.watches(tx, attempt.id()));
            readings.addAll(WatchStore.allReadings(tx, attempt.id()));
        }
        return new Day(
                events,
                ModelStore.all(tx),
                BatchStore.all(tx),
                MotorStore.all(tx),
                entries,
                ModelStore.entryModels(tx),
                windows,
                CrewStore.all(tx),
                FlightStore.all(tx),
                attempts,
                hows(tx, events),
                watches,
                readings,
                people,
                new Day.More(
                        TermsStore.all(tx),
                        FlightRulesStore.all(tx),
                        EntryStore.motors(tx),
                        EntryStore.tasks(tx),
                        StationStore.all(tx),
                        ModelStore.notes(tx),
                        InspectionStore.all(tx),
                        AttemptStore.notes(tx),
                        AttemptStore.quiet(tx),
                        ListStore.all(tx),
                        AttemptStore.flightsJudged(tx)));
    }

    private static Map<String, String> hows(Tx tx, List<EventAdded> events) {
        Map<String, String> hows = new HashMap<>();
        for (EventAdded event : events) {
            AttemptStore.ofEvent(tx, event.id()).forEach(attempt -> {
                String how = attempt.how();
                if (how != null) {
                    hows.put(attempt.id(), how);
                }
            });
        }
        return hows;
    }
}
