package org.skeinday.exchange;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.standing.DecidedFlight;
import org.skeinday.standing.Scoring;
import org.skeinday.standing.Standings;

/** {@code results.csv}: the order of each contest. Derived from the other files, so it is written and never read. */
final class ResultsFile implements DayFile {
    static final String NAME = "results.csv";

    private static final List<Column> COLUMNS = List.of(
            Column.text("event", 120),
            Column.plain("place"),
            Column.text("entry", 120),
            Column.text("team", 120),
            Column.text("division", 60),
            Column.plain("score"),
            Column.text("attempts", 4000));

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        throw new IllegalStateException("Results are derived; they are never read");
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (EventAdded event : book.day().events()) {
            if (!event.ofPractice()) {
                put(book, event, table);
            }
        }
    }

    private static void put(ExportContext book, EventAdded event, Table table) {
        Map<String, EntryAdded> entries = book.day().entries().stream()
                .filter(entry -> entry.eventId().equals(event.id()))
                .collect(Collectors.toMap(EntryAdded::name, entry -> entry));
        Map<String, List<DecidedFlight>> flown = new LinkedHashMap<>();
        entries.forEach((name, entry) -> flown.put(name, flown(book, entry)));
        Scoring scoring = Scoring.of(event, book.day().rulesOf(event.id()));
        int rank = 0;
        for (Standings.Placed placed : scoring.order(flown)) {
            EntryAdded entry = Optional.ofNullable(entries.get(placed.entry())).orElseThrow();
            table.line(event.day(), event.name(), Table.order(rank++))
                    .put("event", event.name())
                    .put("place", placed.place() == 0 ? "" : Numbers.text(placed.place()))
                    .put("entry", entry.name())
                    .put("team", entry.team())
                    .put("division", entry.division())
                    .put(
                            "score",
                            placed.countedMs()
                                    .map(ms -> Numbers.time(scoring.shownMs(ms)))
                                    .orElse(""))
                    .put("attempts", attempts(book, entry));
        }
    }

    private static List<DecidedFlight> flown(ExportContext book, EntryAdded entry) {
        return of(book, entry).stream()
                .flatMap(
                        a -> OfficialFlights.of(
                                a.id(), a.state(), a.officialMs(), a.voidReason(), Boolean.TRUE.equals(a.flownAgain()))
                                .stream())
                .toList();
    }

    private static List<AttemptImported> of(ExportContext book, EntryAdded entry) {
        return book.day().attempts().stream()
                .filter(attempt -> attempt.entryId().equals(entry.id()))
                .sorted(Comparator.comparingInt(AttemptImported::number))
                .toList();
    }

    private static String attempts(ExportContext book, EntryAdded entry) {
        return of(book, entry).stream()
                .map(a -> a.officialMs() == null ? a.state() : Numbers.time(a.officialMs()))
                .collect(Collectors.joining(" | "));
    }
}
