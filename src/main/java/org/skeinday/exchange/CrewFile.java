package org.skeinday.exchange;

import java.util.List;
import java.util.Map;
import org.skeinday.contest.CrewAdded;

/** {@code crew.csv}: who helps with what, in one event or, where none is named, in all. */
final class CrewFile implements DayFile {
    static final String NAME = "crew.csv";

    private static final List<Column> COLUMNS = List.of(
            Column.text("name", 120).filled(),
            Column.text("event", 120),
            Column.text("tasks", 120),
            Column.plain("clean winds"),
            Column.text("team", 120));

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
        String name = row.text("name");
        String event = row.isEmpty("event") ? "" : row.named("event", context.events);
        String tasks = String.join(",", row.words("tasks", "task", CrewAdded.ROLES));
        Integer winds = Numbers.whole(row, "clean winds", 0, 10_000);
        if (row.isWrong()) {
            return;
        }
        String person = context.person(name);
        context.crew.add(row, "name", ImportContext.key(person, event), "'" + name + "'", person);
        context.clearances.of(person, event, tasks, row);
        context.take(row, "crew.added", () -> new CrewAdded(person, event, tasks, winds, row.optional("team")));
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (CrewAdded crew : book.day().crew()) {
            String name = book.person(crew.personId());
            String event =
                    crew.eventId().isEmpty() ? "" : book.event(crew.eventId()).name();
            table.line(name, event)
                    .of(CrewLineId.of(crew).toString())
                    .put("name", name)
                    .put("event", event)
                    .put("tasks", crew.roles().replace(",", " | "))
                    .put("clean winds", Numbers.text(crew.cleanWinds()))
                    .put("team", crew.team());
        }
        for (Map.Entry<String, String> person : book.people().entrySet()) {
            if (book.day().crew().stream().noneMatch(c -> c.personId().equals(person.getKey()))) {
                table.line(person.getValue(), "")
                        .of(new CrewLineId(person.getKey(), "").toString())
                        .put("name", person.getValue());
            }
        }
    }
}
