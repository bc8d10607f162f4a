package org.skeinday.exchange.action;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.Contacts;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.store.AloftStore;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlightStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.exchange.Day;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.InspectionStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.store.ListStore;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.store.BreakEvidenceStore;
import org.skeinday.winding.store.HeldStore;

/** Reads everything that files can carry, in one snapshot, with as many queries for a season as for a day. */
public final class ExchangeDayReader {
    private ExchangeDayReader() {}

    /** @param people person id to display name, as kept beside the record */
    public static Day all(Tx tx, Map<String, String> people) {
        return of(
                tx,
                people,
                new Attempted(
                        AttemptStore.asImported(tx),
                        AloftStore.told(tx),
                        WatchStore.watches(tx),
                        WatchStore.allReadings(tx),
                        withContacts(tx),
                        AttemptStore.quiet(tx),
                        AttemptStore.flightsJudged(tx),
                        Stations.told(tx),
                        HeldStore.byAttempt(tx)));
    }

    /** The same without what attempts, watches and readings left behind: no form of Prepare asks for it. */
    public static Day prepared(Tx tx, Map<String, String> people) {
        return of(tx, people, Attempted.NONE);
    }

    /** What watches marked of contacts goes with the card: marks themselves stand in no file. */
    private static List<AttemptNoted> withContacts(Tx tx) {
        Map<String, AttemptNoted> notes = new LinkedHashMap<>();
        AttemptStore.notes(tx).forEach(n -> notes.put(n.attemptId(), n));
        WatchStore.touched(tx).forEach((attempt, marks) -> {
            AttemptNoted noted = notes.getOrDefault(attempt, AttemptNoted.blank(attempt));
            if (!Contacts.isContact(noted.contacts()) && !marks.contacts().isEmpty()) {
                notes.put(attempt, noted.touched(marks.contacts()));
            }
        });
        return List.copyOf(notes.values());
    }

    private record Attempted(
            List<AttemptImported> attempts,
            AloftStore.Told told,
            List<WatchTaken> watches,
            List<ReadingTaken> readings,
            List<AttemptNoted> noted,
            List<Quiet> quiet,
            List<FlightJudged> judged,
            List<AttemptStation> places,
            List<WindHeld> held) {
        static final Attempted NONE = new Attempted(
                List.of(),
                AloftStore.Told.NOTHING,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static Day of(Tx tx, Map<String, String> people, Attempted attempted) {
        List<EventAdded> events = EventStore.all(tx);
        return new Day(
                events,
                ModelStore.all(tx),
                BatchStore.all(tx),
                MotorStore.all(tx),
                inOrder(events, EntryStore.byEvent(tx)),
                ModelStore.entryModels(tx),
                inOrder(events, WindowStore.byEvent(tx)),
                CrewStore.all(tx),
                FlightStore.all(tx),
                attempted.attempts(),
                attempted.told().hows(),
                attempted.watches(),
                attempted.readings(),
                people,
                new Day.More(
                        TermsStore.all(tx),
                        FlightRulesStore.all(tx),
                        EntryStore.motors(tx),
                        EntryStore.tasks(tx),
                        StationStore.all(tx),
                        ModelStore.notes(tx),
                        InspectionStore.all(tx),
                        attempted.noted(),
                        attempted.quiet(),
                        ListStore.known(tx),
                        attempted.judged(),
                        attempted.told().aloft(),
                        EvidenceStore.all(tx),
                        attempted.places(),
                        BreakEvidenceStore.steps(tx),
                        attempted.held()));
    }

    private static <T> List<T> inOrder(List<EventAdded> events, Map<String, List<T>> byEvent) {
        return events.stream()
                .flatMap(event -> byEvent.getOrDefault(event.id(), List.of()).stream())
                .toList();
    }
}
