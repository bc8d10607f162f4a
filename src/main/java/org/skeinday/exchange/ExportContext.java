package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aloft;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.TimedBy;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.motor.MotorInspected;
import org.skeinday.motor.MotorStep;
import org.skeinday.winding.HeldDoubts;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.WindHeld;

/** A day to be written: its values, with names in place of ids. */
final class ExportContext {
    private final Day day;
    private final Moments moments;
    private final Map<String, EventAdded> events = new HashMap<>();
    private final Map<String, EntryAdded> entries = new HashMap<>();
    private final Map<String, AttemptImported> attempts = new HashMap<>();
    private final Map<String, String> names = new HashMap<>();
    private final Map<String, List<ValueMarked>> marks;
    private final Map<String, List<ReadingTaken>> readings;
    private final Map<String, WindHeld> held = new HashMap<>();
    private final Set<String> heldConfirmed = new HashSet<>();
    private final Map<String, Integer> uses = new HashMap<>();
    private final Map<String, MotorStep> breaks = new HashMap<>();
    private final Map<String, String> people;

    ExportContext(Day day, Moments moments) {
        this.day = day;
        this.moments = moments;
        day.events().forEach(e -> events.put(e.id(), e));
        day.entries().forEach(e -> entries.put(e.id(), e));
        day.attempts().forEach(a -> attempts.put(a.id(), a));
        day.models().forEach(m -> names.put(m.id(), m.name()));
        day.batches().forEach(b -> names.put(b.id(), b.name()));
        day.motors().forEach(m -> names.put(m.id(), m.tag()));
        this.marks = day.more().marks().stream().collect(Collectors.groupingBy(ValueMarked::flightId));
        this.readings = day.readings().stream()
                .filter(r -> !Boolean.TRUE.equals(r.takenBack()))
                .collect(Collectors.groupingBy(ReadingTaken::attemptId));
        day.more().held().forEach(h -> held.put(h.windId(), h));
        day.more().heldConfirmed().forEach(so -> heldConfirmed.add(so.markId()));
        day.more().uses().forEach(use -> uses.put(use.flightId(), use.number()));
        day.more().breaks().forEach(b -> breaks.put(b.motorId(), b));
        this.people = people(day);
    }

    /** Everybody who is named, does something or timed something; of two with the same name one gets a number. */
    private static Map<String, String> people(Day day) {
        var ids = new TreeSet<>(day.people().keySet());
        day.crew().forEach(c -> ids.add(c.personId()));
        day.watches().forEach(w -> ids.add(w.personId()));
        day.readings().stream()
                .map(r -> r.personId() == null ? "" : r.personId())
                .forEach(ids::add);
        day.more().entryTasks().forEach(t -> ids.add(t.personId()));
        day.more().marks().stream()
                .map(m -> m.confirmedBy() == null ? "" : m.confirmedBy())
                .forEach(ids::add);
        ids.remove("");
        Map<String, String> labels = new TreeMap<>();
        for (String id : ids) {
            String name = day.people().getOrDefault(id, "someone");
            String label = name;
            for (int k = 2; labels.containsValue(label) || (!label.equals(name) && isName(day, label)); k++) {
                label = name + " (" + k + ")";
            }
            labels.put(id, label);
        }
        return labels;
    }

    private static boolean isName(Day day, String label) {
        return day.people().containsValue(label);
    }

    Day day() {
        return day;
    }

    Map<String, String> people() {
        return people;
    }

    EventAdded event(String id) {
        return known(events.get(id), id);
    }

    EntryAdded entry(String id) {
        return known(entries.get(id), id);
    }

    AttemptImported attempt(String id) {
        return known(attempts.get(id), id);
    }

    /** A row about an attempt, its event, entry and number filled in. @param within its place among the rows of it */
    Table.Cells line(Table table, AttemptImported attempt, long... within) {
        EventAdded event = event(attempt.eventId());
        EntryAdded entry = entry(attempt.entryId());
        var order = new ArrayList<>(List.of(event.day(), event.name(), entry.name(), Table.order(attempt.number())));
        Arrays.stream(within).mapToObj(Table::order).forEach(order::add);
        return table.line(order.toArray(String[]::new))
                .put("event", event.name())
                .put("entry", entry.name())
                .put("attempt", Numbers.text(attempt.number()));
    }

    /** Of a model, batch or motor; empty without one. */
    String name(@Nullable String id) {
        return id == null ? "" : known(names.get(id), id);
    }

    String person(@Nullable String id) {
        return id == null || id.isEmpty() ? "" : known(people.get(id), id);
    }

    /** What was said of the numbers of one flight. */
    ValueMarks marks(String flight) {
        return ValueMarks.of(marks.getOrDefault(flight, List.of()));
    }

    TimedBy timed(AttemptImported attempt) {
        return new TimedBy(
                attempt.officialMs(),
                event(attempt.eventId()).dayKind() == DayKind.VISITING,
                noted(attempt.id()).map(AttemptNoted::fromPaper).orElse(false),
                readings.getOrDefault(attempt.id(), List.of()));
    }

    /** What was read while the motor of an attempt was held. */
    Optional<WindHeld> held(String attempt) {
        return Optional.ofNullable(held.get(attempt));
    }

    /** Whether somebody said that this reading of its hold was so. */
    boolean isConfirmed(String attempt, HeldRead read) {
        return heldConfirmed.contains(HeldDoubts.id(attempt, read));
    }

    /** Which use of its motor this flight was, from 1; empty where it was none, or nobody counted on. */
    String use(String flight) {
        return Numbers.text(uses.get(flight));
    }

    /** Why such readings enter no fit; empty where they do. */
    String heldOut(String attempt) {
        return day.more().heldOut().stream()
                .filter(out -> out.windId().equals(attempt))
                .map(out -> String.valueOf(out.reason()))
                .findFirst()
                .orElse("");
    }

    /** The break of a motor that is broken. */
    Optional<MotorStep> broke(String motor) {
        return Optional.ofNullable(breaks.get(motor));
    }

    Optional<MotorInspected> inspection(String motor) {
        return day.more().inspections().stream()
                .filter(i -> i.motorId().equals(motor))
                .findFirst();
    }

    Optional<AttemptNoted> noted(String attempt) {
        return day.more().noted().stream()
                .filter(n -> n.attemptId().equals(attempt))
                .findFirst();
    }

    Optional<Aloft> aloft(String attempt) {
        return day.more().aloft().stream()
                .filter(a -> a.attemptId().equals(attempt))
                .findFirst();
    }

    Optional<AttemptStation> place(String attempt) {
        return day.more().places().stream()
                .filter(at -> at.attemptId().equals(attempt))
                .findFirst();
    }

    Optional<FlightJudged> judged(String attempt) {
        return day.more().judged().stream()
                .filter(j -> j.attemptId().equals(attempt))
                .findFirst();
    }

    Optional<Quiet> quiet(String attempt) {
        return day.more().quiet().stream()
                .filter(q -> q.attemptId().equals(attempt))
                .findFirst();
    }

    String moment(@Nullable Long ms) {
        return moments.text(ms);
    }

    private static <T> T known(@Nullable T value, String id) {
        if (value == null) {
            throw new IllegalStateException("The record names " + id + ", but has no such thing");
        }
        return value;
    }
}
