package org.skeinday.review.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlightStore;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.FoundKind;
import org.skeinday.review.RecordSearch;
import org.skeinday.review.store.ReviewFacts;

/** Everything of the record that can be found, by its names and words. */
final class SearchItems {
    private final Tx tx;
    private final Map<String, String> people;
    private final ZoneId zone;
    private final Map<String, String> names = new HashMap<>();
    private final List<RecordSearch.Item> items = new ArrayList<>();

    SearchItems(Tx tx, Map<String, String> people, ZoneId zone) {
        this.tx = tx;
        this.people = people;
        this.zone = zone;
    }

    /** Where it is to be seen. */
    static String address(RecordSearch.Item item) {
        return switch (item.kind()) {
            case EVENT -> "/prepare/events/row/" + item.id();
            case MODEL -> "/prepare/models/row/" + item.id();
            case BATCH -> "/prepare/batches/row/" + item.id();
            case MOTOR -> "/bench/motor/" + item.id();
            case PERSON -> "/prepare/crew";
            case ENTRY -> "/prepare/entries/row/" + item.id();
            case NOTE -> "/prepare/notes/row/" + item.id();
            case CHANGE -> "/evening?look=event:" + item.id();
            case ATTEMPT -> "/attempt/" + item.id();
            case FLIGHT -> "/evening/flight/" + item.id();
        };
    }

    List<RecordSearch.Item> all() {
        things();
        attempts();
        flights();
        return items;
    }

    private void add(FoundKind kind, String id, String title, String text, long at) {
        items.add(new RecordSearch.Item(kind, id, title, text, at));
    }

    private void things() {
        EventStore.all(tx).forEach(e -> {
            names.put(e.id(), e.name());
            add(FoundKind.EVENT, e.id(), e.name(), words(e.day(), e.hall(), e.kind()), at(e.day()));
        });
        ModelStore.all(tx).forEach(m -> {
            names.put(m.id(), m.name());
            add(FoundKind.MODEL, m.id(), m.name(), m.team(), 0);
        });
        BatchStore.all(tx).forEach(b -> {
            names.put(b.id(), b.name());
            add(FoundKind.BATCH, b.id(), b.name(), words(b.openedDay()), 0);
        });
        MotorStore.all(tx).forEach(m -> {
            names.put(m.id(), m.tag());
            add(FoundKind.MOTOR, m.id(), m.tag(), words("batch " + name(m.batchId()), m.team()), 0);
        });
        people.forEach((id, name) -> add(FoundKind.PERSON, id, name, "", 0));
        EntryStore.all(tx).forEach(e -> {
            names.put(e.id(), e.name());
            add(FoundKind.ENTRY, e.id(), e.name(), words(e.team(), e.division(), name(e.eventId())), 0);
        });
        ModelStore.notes(tx)
                .forEach(n -> add(FoundKind.NOTE, n.id(), name(n.modelId()), words(n.kind(), n.note()), n.atMs()));
        ReviewFacts.changes(tx)
                .forEach(d -> add(
                        FoundKind.CHANGE,
                        d.change().eventId(),
                        d.event(),
                        String.join(" · ", d.change().lines()),
                        at(d.day())));
    }

    private void attempts() {
        Map<String, AttemptNoted> notes =
                AttemptStore.notes(tx).stream().collect(Collectors.toMap(AttemptNoted::attemptId, Function.identity()));
        Map<String, String> spoilt = new HashMap<>();
        FlownStore.own(tx).forEach(f -> spoilt.put(f.id(), f.counts().reason()));
        Map<String, AttemptNumber> numbers = AttemptNumbers.all(tx);
        for (AttemptImported a : AttemptStore.asImported(tx)) {
            AttemptNoted note = notes.getOrDefault(a.id(), AttemptNoted.blank(a.id()));
            Long released = a.releasedAtMs();
            add(
                    FoundKind.ATTEMPT,
                    a.id(),
                    name(a.entryId()) + ", "
                            + Objects.requireNonNull(numbers.get(a.id())).words(),
                    words(
                            name(a.eventId()),
                            name(a.modelId()),
                            name(a.motorId()),
                            a.voidReason(),
                            note.contacts(),
                            note.note(),
                            spoilt.get(a.id())),
                    released == null ? 0 : released);
        }
    }

    /** By their day: a model's name in their title would put them before the model itself. */
    private void flights() {
        for (PracticeFlown f : FlightStore.all(tx)) {
            String day = LocalDate.ofInstant(Instant.ofEpochMilli(f.flownAtMs()), zone)
                    .toString();
            add(
                    FoundKind.FLIGHT,
                    f.id(),
                    "Flight of " + day,
                    words(name(f.modelId()), name(f.motorId()), f.note(), f.invalidReason()),
                    f.flownAtMs());
        }
    }

    private String name(@Nullable String id) {
        return id == null ? "" : names.getOrDefault(id, "");
    }

    private static String words(@Nullable String... parts) {
        return Stream.of(parts).filter(p -> p != null && !p.isBlank()).collect(Collectors.joining(" · "));
    }

    private long at(String day) {
        return LocalDate.parse(day).atStartOfDay(zone).toInstant().toEpochMilli();
    }
}
