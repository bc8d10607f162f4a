package org.skeinday.exchange;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EventAdded;

/** {@code entries.csv}: who takes part in which event with which models. */
final class EntriesFile implements DayFile {
    private static final List<Column> COLUMNS = List.of(
            Column.text("event", 120),
            Column.text("entry", 120).filled(),
            Column.text("team", 120).filled(),
            Column.text("division", 60),
            Column.plain("own"),
            Column.text("models", 4000));

    @Override
    public String name() {
        return "entries.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, Intake intake) {
        String event = intake.event(row);
        String id = intake.newId();
        String name = row.text("entry");
        intake.entries.add(row, "entry", name.isEmpty() ? "" : Intake.key(event, name), "'" + name + "'", id);
        boolean own = row.yes("own", false);
        List<String> models = models(row, intake);
        intake.take(
                row,
                "entry.added",
                () -> new EntryAdded(id, event, name, row.text("team"), row.optional("division"), own));
        for (String model : models) {
            intake.take(row, "entry.model", () -> new EntryModel(id, model));
        }
    }

    private static List<String> models(Row row, Intake intake) {
        List<String> names = Arrays.stream(row.text("models").split("[|]", -1))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
        for (String name : names) {
            if (intake.models.id(name).isEmpty()) {
                row.error(
                        "models",
                        "there is no model '" + name + "'",
                        intake.models.suggestion(name) + "; part several by " + ModelsFile.BETWEEN);
            }
        }
        return names.stream()
                .distinct()
                .flatMap(name -> intake.models.id(name).stream())
                .toList();
    }

    @Override
    public void put(Book book, Table table) {
        for (EntryAdded entry : book.day().entries()) {
            EventAdded event = book.event(entry.eventId());
            table.line(event.day(), event.name(), entry.name())
                    .put("event", event.name())
                    .put("entry", entry.name())
                    .put("team", entry.team())
                    .put("division", entry.division())
                    .put("own", entry.own() ? "yes" : "no")
                    .put("models", models(book, entry));
        }
    }

    private static String models(Book book, EntryAdded entry) {
        return book.day().entryModels().stream()
                .filter(has -> has.entryId().equals(entry.id()))
                .map(has -> book.name(has.modelId()))
                .sorted()
                .collect(Collectors.joining(" " + ModelsFile.BETWEEN + " "));
    }
}
