package org.skeinday.exchange;

import java.util.List;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.WatchTaken;

/** {@code watches.csv}: which device and person timed which attempt, with or without a reading. */
final class WatchesFile implements DayFile {
    private static final List<Column> COLUMNS = List.of(
            Column.text("event", 120),
            Column.text("entry", 120).filled(),
            Column.plain("attempt").filled(),
            Column.plain("place").filled(),
            Column.text("device", 80).filled(),
            Column.text("person", 120));

    @Override
    public String name() {
        return "watches.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String attempt = context.attempt(row);
        Integer place = Numbers.whole(row, "place", 1, 3);
        String person = row.named("person", context.people);
        if (place == null || attempt.isEmpty()) {
            return;
        }
        context.watches.add(row, "place", ImportContext.key(attempt, place), place + " of this attempt", attempt);
        context.take(row, "watch.taken", () -> new WatchTaken(attempt, place, row.text("device"), person, null, null));
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (WatchTaken watch : book.day().watches()) {
            AttemptImported attempt = book.attempt(watch.attemptId());
            book.line(table, attempt, watch.slot())
                    .put("place", Numbers.text(watch.slot()))
                    .put("device", watch.device())
                    .put("person", book.person(watch.personId()));
        }
    }
}
