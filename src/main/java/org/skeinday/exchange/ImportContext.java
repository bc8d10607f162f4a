package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.skeinday.contest.WindowAdded;
import org.skeinday.steps.ChecklistRow;
import org.skeinday.steps.KnownLists;

/** An import under way: what was found so far, and what the record has already. */
final class ImportContext {
    final Names events = new Names("event");
    final Names models = new Names("model");
    final Names batches = new Names("batch");
    final Names motors = new Names("motor");
    final Names entries = new Names("entry");
    final Names windows = new Names("window");
    final Names people = new Names("person");
    final Names crew = new Names("line for");
    final Names flights = new Names("flight");
    final Names attempts = new Names("attempt");
    final Names watches = new Names("watch");
    final Names readings = new Names("reading");

    /** The numbers of each entry's attempts; the row is there for those of the files. */
    final Map<String, TreeMap<Integer, java.util.Optional<Row>>> numbers = new LinkedHashMap<>();

    /** Motor turns to a crank turn of the winder, by event. */
    final Map<String, Double> ratios = new LinkedHashMap<>();

    final Names terms = new Names("line of terms for the event");
    /** Attempts of each entry by event: no more of them can be dropped. */
    final Map<String, Integer> attemptsOf = new LinkedHashMap<>();

    final Names flightRules = new Names("line of rules for the event");
    final Names notes = new Names("note");
    final Names stations = new Names("station");
    final KnownLists lists;
    /** The rows of the file under way. */
    final List<Map.Entry<Row, ChecklistRow>> listRows = new ArrayList<>();

    final Set<String> wrongLists = new HashSet<>();
    final Declared declared;
    final ModelOverlap busy;
    final Clearances clearances;
    final Moments moments;
    final UsesOfRows uses = new UsesOfRows();
    private final Day there;
    private final Set<String> inspected = new HashSet<>();
    private final Supplier<String> newId;
    private final List<DayFiles.Named> facts = new ArrayList<>();
    private final Map<String, String> newPeople = new LinkedHashMap<>();

    ImportContext(Day there, Moments moments, Supplier<String> newId) {
        this.there = there;
        this.moments = moments;
        this.newId = newId;
        this.declared = new Declared(there);
        this.busy = new ModelOverlap(there, moments);
        this.clearances = new Clearances(there);
        there.more().terms().forEach(t -> terms.inRecord(t.eventId(), t.eventId()));
        there.more().flightRules().forEach(r -> flightRules.inRecord(r.eventId(), r.eventId()));
        this.lists = there.more().lists();
        there.more().stations().forEach(s -> stations.inRecord(s.name(), s.id()));
        there.more().notes().forEach(n -> notes.inRecord(key(n.modelId(), n.atMs(), n.note()), n.id()));
        there.more().inspections().forEach(i -> inspected.add(i.motorId()));
        there.events().forEach(e -> {
            events.inRecord(e.name(), e.id());
            attemptsOf.put(e.id(), e.attempts());
            ratios.put(e.id(), e.winderRatio());
        });
        there.models().forEach(m -> models.inRecord(m.name(), m.id()));
        there.batches().forEach(b -> batches.inRecord(b.name(), b.id()));
        there.motors().forEach(m -> motors.inRecord(m.tag(), m.id()));
        there.entries().forEach(e -> entries.inRecord(key(e.eventId(), e.name()), e.id()));
        there.windows().forEach(w -> windows.inRecord(key(w), w.id()));
        there.people().forEach((id, name) -> people.inRecord(name, id));
        there.crew().forEach(c -> crew.inRecord(key(c.personId(), c.eventId()), c.personId()));
        there.flights()
                .forEach(f -> flights.inRecord(key(f.eventId(), f.motorId(), f.flownAtMs(), f.durationMs()), f.id()));
        there.attempts().forEach(a -> {
            attempts.inRecord(key(a.entryId(), a.number()), a.id());
            numbers.computeIfAbsent(a.entryId(), e -> new TreeMap<>()).put(a.number(), java.util.Optional.empty());
        });
        there.watches().forEach(w -> watches.inRecord(key(w.attemptId(), w.slot()), w.attemptId()));
    }

    /** Whether the record has an inspection of this motor, which an empty cell must not leave standing. */
    boolean isInspected(String motor) {
        return inspected.contains(motor);
    }

    /** Several things as one name; no cell holds this separator. */
    static String key(Object... parts) {
        return String.join(
                "\u0000", java.util.Arrays.stream(parts).map(String::valueOf).toList());
    }

    static String key(WindowAdded w) {
        return key(w.eventId(), w.entryId() == null ? "" : w.entryId(), w.opensAtMs(), w.closesAtMs());
    }

    String newId() {
        return newId.get();
    }

    /** Takes a fact, unless its row is wrong; what the fact itself refuses is noted in the row. */
    void take(Row row, String kind, Supplier<Object> body) {
        if (row.isWrong()) {
            return;
        }
        try {
            facts.add(new DayFiles.Named(kind, body.get()));
        } catch (IllegalArgumentException e) {
            row.said("", e);
        }
    }

    /** The event of a row; where it names none, the only one there is. Empty, and noted, when that is not clear. */
    String event(Row row) {
        if (!row.isEmpty("event")) {
            return row.named("event", events);
        }
        return events.only().orElseGet(() -> {
            row.error("event", "this is empty and there is not just one event", events.oneOf());
            return "";
        });
    }

    /** The entry of a row in an event; empty, and noted, when there is none. */
    String entry(Row row, String event) {
        String name = row.text("entry");
        if (name.isEmpty() || event.isEmpty()) {
            return "";
        }
        return entries.id(key(event, name)).orElseGet(() -> {
            row.error(
                    "entry",
                    "there is no entry '" + name + "' in this event",
                    "write one that entries.csv has for it, or add it there",
                    "choose one of its entries");
            return "";
        });
    }

    /** The attempt that a row is about, by event, entry and number; empty, and noted, when there is none. */
    String attempt(Row row) {
        String entry = entry(row, event(row));
        Integer number = Numbers.whole(row, "attempt", 1, AttemptsFile.MOST_ATTEMPTS);
        if (entry.isEmpty() || number == null) {
            return "";
        }
        String key = key(entry, number);
        if (attempts.isInRecord(key)) {
            row.error(
                    "attempt",
                    "attempt " + number + " of this entry is in the record already",
                    "leave this line out: an attempt comes in together with all that was measured in it",
                    Names.CHANGE_ONE);
        } else if (attempts.id(key).isEmpty()) {
            row.error("attempt", "there is no attempt " + number + " of this entry", "add it to attempts.csv");
        }
        return attempts.id(key).orElse("");
    }

    /** The person of that name: known, or new from now on. */
    String person(String name) {
        return people.id(name).orElseGet(() -> {
            String id = newId();
            people.inRecord(name, id);
            newPeople.put(id, name);
            return id;
        });
    }

    /** All of them, with what follows from all rows together. */
    List<DayFiles.Named> facts() {
        return Stream.concat(facts.stream(), uses.facts(there, facts).stream()).toList();
    }

    Map<String, String> newPeople() {
        return Map.copyOf(newPeople);
    }
}
