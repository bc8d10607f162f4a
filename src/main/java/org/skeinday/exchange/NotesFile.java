package org.skeinday.exchange;

import java.util.List;
import org.skeinday.contest.ModelNote;

/** {@code notes.csv}: what was trimmed on models, and repaired. */
final class NotesFile implements DayFile {
    private static final List<Column> COLUMNS = List.of(
            Column.text("model", 120).filled(),
            Column.choice("kind", "trim", ModelNote.KINDS),
            Column.plain("when").filled(),
            Column.text("note", 400).filled(),
            Column.plain("ready"));

    @Override
    public String name() {
        return "notes.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String id = context.newId();
        String model = row.named("model", context.models);
        String kind = row.word("kind");
        Long at = context.moments.read(row, "when");
        Long ready = context.moments.read(row, "ready");
        if (at != null && ready != null && ready < at) {
            row.error(
                    "ready",
                    "it would be ready before it was begun",
                    "write a moment after " + row.text("when") + ", or nothing");
        }
        if (at != null) {
            String note = row.text("note");
            context.notes.add(row, "note", ImportContext.key(model, at, note), "of " + row.text("when"), id);
            context.take(row, "model.note", () -> new ModelNote(id, model, kind, at, note, ready));
        }
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (ModelNote note : book.day().more().notes()) {
            table.line(book.name(note.modelId()), Table.order(note.atMs()))
                    .of(note.id())
                    .put("model", book.name(note.modelId()))
                    .put("kind", note.kind())
                    .put("when", book.moment(note.atMs()))
                    .put("note", note.note())
                    .put("ready", book.moment(note.readyAtMs()));
        }
    }
}
