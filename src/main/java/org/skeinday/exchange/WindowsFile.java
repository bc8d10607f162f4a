package org.skeinday.exchange;

import java.util.List;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.WindowAdded;

/** {@code windows.csv}: when an entry may fly, or all of them where none is named. */
final class WindowsFile implements DayFile {
    private static final List<Column> COLUMNS = List.of(
            Column.text("event", 120),
            Column.text("entry", 120),
            Column.plain("opens").filled(),
            Column.plain("closes").filled());

    @Override
    public String name() {
        return "windows.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String event = context.event(row);
        String entry = context.entry(row, event);
        Long opens = context.moments.read(row, "opens");
        Long closes = context.moments.read(row, "closes");
        if (opens == null || closes == null || row.isWrong()) {
            return;
        }
        if (closes <= opens) {
            row.error(
                    "closes",
                    "the window closes at " + row.text("closes") + ", not after it opens at " + row.text("opens"),
                    "write a moment after it opens");
            return;
        }
        WindowAdded window = new WindowAdded(context.newId(), event, entry.isEmpty() ? null : entry, opens, closes);
        context.windows.add(row, "opens", ImportContext.key(window), "that opens at " + row.text("opens"), window.id());
        context.busy.check(row, window);
        context.take(row, "window.added", () -> window);
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (WindowAdded window : book.day().windows()) {
            EventAdded event = book.event(window.eventId());
            String entry =
                    window.entryId() == null ? "" : book.entry(window.entryId()).name();
            table.line(
                            event.day(),
                            event.name(),
                            Table.order(window.opensAtMs()),
                            Table.order(window.closesAtMs()),
                            entry)
                    .of(window.id())
                    .put("event", event.name())
                    .put("entry", entry)
                    .put("opens", book.moment(window.opensAtMs()))
                    .put("closes", book.moment(window.closesAtMs()));
        }
    }
}
