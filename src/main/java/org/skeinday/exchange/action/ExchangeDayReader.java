package org.skeinday.exchange.action;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.Contacts;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.Marks;
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
import org.skeinday.exchange.Day;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.InspectionStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.store.ListStore;
import org.skeinday.winding.store.BreakEvidenceStore;
import org.skeinday.winding.store.HeldStore;
import org.skeinday.winding.store.WindWorth;

/** Reads everything that files can carry, in one snapshot, with as many queries for a season as for a day. */
public final class ExchangeDayReader {
    private ExchangeDayReader() {}

    /** @param people person id to display name, as kept beside the record */
    public static Day all(Tx tx, Map<String, String> people) {
        AloftStore.Told told = AloftStore.told(tx);
        Map<String, Marks> touched = WatchStore.touched(tx);
        List<AttemptNoted> notes = AttemptStore.notes(tx);
        var worth = new WindWorth(tx);
        HeldStore.Told held = HeldStore.byAttempt(tx, worth);
        return of(
                tx,
                people,
                worth,
                new Attempted(
                        AttemptStore.asImported(tx),
                        told,
                        WatchStore.watches(tx),
                        WatchStore.allReadings(tx),
                        withContacts(notes, touched),
                        AttemptStore.quiet(tx),
                        judged(tx, new Contacted(told, touched, notes)),
                        Stations.told(tx),
                        held));
    }

    /** The same without what attempts, watches and readings left behind: no form of Prepare asks for it. */
    public static Day prepared(Tx tx, Map<String, String> people) {
        return of(tx, people, new WindWorth(tx), Attempted.NONE);
    }

    /** What watches marked of contacts goes with the card: marks themselves stand in no file. */
    private static List<AttemptNoted> withContacts(List<AttemptNoted> all, Map<String, Marks> touched) {
        Map<String, AttemptNoted> notes = new LinkedHashMap<>();
        all.forEach(n -> notes.put(n.attemptId(), n));
        touched.forEach((attempt, marks) -> {
            AttemptNoted noted = notes.getOrDefault(attempt, AttemptNoted.blank(attempt));
            if (!Contacts.isContact(noted.contacts()) && !marks.contacts().isEmpty()) {
                notes.put(attempt, noted.touched(marks.contacts()));
            }
        });
        return List.copyOf(notes.values());
    }

    /** What people said of flights, as it stands beside all that is known of contacts by now. */
    private static List<FlightJudged> judged(Tx tx, Contacted known) {
        return AttemptStore.flightsJudged(tx).stream()
                .map(word -> word.asOf(known.of(word.attemptId())))
                .toList();
    }

    /** All that tells of contacts, by attempt. */
    private record Contacted(Map<String, Long> caughtMs, Map<String, Marks> touched, Map<String, String> noted) {
        Contacted(AloftStore.Told told, Map<String, Marks> touched, List<AttemptNoted> notes) {
            this(new HashMap<>(), touched, new HashMap<>());
            told.aloft().stream()
                    .filter(aloft -> aloft.caughtMs() != null)
                    .forEach(aloft -> caughtMs.put(aloft.attemptId(), aloft.caughtMs()));
            notes.forEach(note -> noted.put(note.attemptId(), String.valueOf(note.contacts())));
        }

        int of(String attempt) {
            Marks marks = touched.get(attempt);
            return Contacts.known(
                    noted.getOrDefault(attempt, ""),
                    Stream.concat(
                                    marks == null ? Stream.of() : marks.contactsMs().stream(),
                                    Optional.ofNullable(caughtMs.get(attempt)).stream())
                            .toList());
        }
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
            HeldStore.Told held) {
        static final Attempted NONE = new Attempted(
                List.of(),
                AloftStore.Told.NOTHING,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                HeldStore.Told.NOTHING);
    }

    private static Day of(Tx tx, Map<String, String> people, WindWorth worth, Attempted attempted) {
        List<EventAdded> events = EventStore.all(tx);
        List<MotorAdded> motors = MotorStore.all(tx);
        BreakEvidenceStore.Told breaks = BreakEvidenceStore.told(tx, motors, worth);
        return new Day(
                events,
                ModelStore.all(tx),
                BatchStore.all(tx),
                motors,
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
                        breaks.marks(),
                        attempted.places(),
                        breaks.steps(),
                        attempted.held().readings(),
                        attempted.held().confirmed(),
                        attempted.held().leftOut(),
                        List.of()));
    }

    private static <T> List<T> inOrder(List<EventAdded> events, Map<String, List<T>> byEvent) {
        return events.stream()
                .flatMap(event -> byEvent.getOrDefault(event.id(), List.of()).stream())
                .toList();
    }
}
