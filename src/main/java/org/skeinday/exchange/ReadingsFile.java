package org.skeinday.exchange;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.ReadingTaken;

/**
 * {@code readings.csv}: times of attempts as each timekeeper measured them. Readings of an attempt are numbered, so that
 * one can say which other it corrects.
 */
final class ReadingsFile implements DayFile {
    /** Stands for a reading that was to be corrected and never came in. */
    private static final String MISSING = "missing";

    private static final List<Column> COLUMNS = List.of(
            Column.text("event", 120),
            Column.text("entry", 120).filled(),
            Column.plain("attempt").filled(),
            Column.plain("reading"),
            Column.plain("place").filled(),
            Column.choice("instrument", "watch", ReadingTaken.INSTRUMENTS),
            Column.text("person", 120),
            Column.time("time").filled(),
            Column.plain("came in"),
            Column.plain("corrects"),
            Column.choice("taken back", "", List.of("yes", "no")),
            Column.choice("partial", "", List.of("yes", "no")));

    // One object reads one folder: what waits here is looked at in finish.
    private final List<Waiting> waiting = new java.util.ArrayList<>();
    private final Map<String, Integer> counted = new HashMap<>();

    /** A reading whose correction can be looked up once all are in. */
    private record Waiting(Row row, ReadingTaken reading) {}

    @Override
    public String name() {
        return "readings.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String attempt = context.attempt(row);
        int next = counted.merge(attempt, 1, Integer::sum);
        int number = Numbers.whole(row, "reading", 1, 9_999, next);
        Integer place = Numbers.whole(row, "place", 1, 3);
        String instrument = row.word("instrument");
        String person = row.named("person", context.people);
        Long time = Numbers.time(row, "time", 0, ReadingTaken.LONGEST_MS);
        Long cameIn = context.moments.read(row, "came in");
        if (place == null || time == null || attempt.isEmpty()) {
            return;
        }
        String id = context.newId();
        context.readings.add(row, "reading", ImportContext.key(attempt, number), number + " of this attempt", id);
        waiting.add(new Waiting(
                row,
                new ReadingTaken(
                        id,
                        attempt,
                        place,
                        instrument,
                        person.isEmpty() ? null : person,
                        time,
                        cameIn,
                        null,
                        row.yes("taken back") ? Boolean.TRUE : null,
                        row.yes("partial") ? Boolean.TRUE : null)));
    }

    @Override
    public void finish(ImportContext context) {
        for (Waiting one : waiting) {
            ReadingTaken r = one.reading();
            String corrects = corrects(one, context);
            context.take(
                    one.row(),
                    "attempt.reading",
                    () -> new ReadingTaken(
                            r.id(),
                            r.attemptId(),
                            r.slot(),
                            r.instrument(),
                            r.personId(),
                            r.durationMs(),
                            r.atMs(),
                            corrects,
                            r.takenBack(),
                            r.partial()));
        }
    }

    private static @Nullable String corrects(Waiting one, ImportContext context) {
        String typed = one.row().text("corrects");
        if (typed.isEmpty() || typed.equals(MISSING)) {
            return typed.isEmpty() ? null : MISSING;
        }
        return context.readings
                .id(ImportContext.key(one.reading().attemptId(), typed))
                .orElseGet(() -> {
                    one.row()
                            .error(
                                    "corrects",
                                    "there is no reading '" + typed + "' of this attempt",
                                    "write the number in the column reading of the one that it corrects");
                    return null;
                });
    }

    @Override
    public void put(ExportContext book, Table table) {
        Map<String, Integer> last = new HashMap<>();
        Map<String, Integer> numbers = new HashMap<>();
        for (ReadingTaken reading : book.day().readings()) {
            numbers.put(reading.id(), last.merge(reading.attemptId(), 1, Integer::sum));
        }
        for (ReadingTaken reading : book.day().readings()) {
            AttemptImported attempt = book.attempt(reading.attemptId());
            int number = numbers.getOrDefault(reading.id(), 0);
            book.line(table, attempt, number)
                    .put("reading", Numbers.text(number))
                    .put("place", Numbers.text(reading.slot()))
                    .put("instrument", reading.instrument())
                    .put("person", book.person(reading.personId()))
                    .put("time", Numbers.time(reading.durationMs()))
                    .put("came in", book.moment(reading.atMs()))
                    .put("corrects", corrects(book, reading, numbers))
                    .put("taken back", Boolean.TRUE.equals(reading.takenBack()) ? "yes" : "")
                    .put("partial", reading.isPartial() ? "yes" : "");
        }
    }

    private static String corrects(ExportContext book, ReadingTaken reading, Map<String, Integer> numbers) {
        String corrected = reading.corrects();
        if (corrected == null) {
            return "";
        }
        boolean here = book.day().readings().stream()
                .anyMatch(r -> r.id().equals(corrected) && r.attemptId().equals(reading.attemptId()));
        return here ? Numbers.text(numbers.get(corrected)) : MISSING;
    }
}
