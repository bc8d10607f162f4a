package org.skeinday.exchange;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.skeinday.contest.CrewAdded;

/** {@code crew.csv}: who helps with what, in one event or, where none is named, in all. */
final class CrewFile implements DayFile {
    private static final List<Column> COLUMNS =
            List.of(Column.text("name", 120).filled(), Column.text("event", 120), Column.text("tasks", 120));

    @Override
    public String name() {
        return "crew.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, Intake intake) {
        String name = row.text("name");
        String event = row.isEmpty("event") ? "" : row.named("event", intake.events);
        String tasks = tasks(row);
        if (row.isWrong()) {
            return;
        }
        String person = intake.person(name);
        intake.crew.add(row, "name", Intake.key(person, event), "'" + name + "'", person);
        intake.take(row, "crew.added", () -> new CrewAdded(person, event, tasks));
    }

    /** In the order of the list, each once. */
    private static String tasks(Row row) {
        List<String> typed = Arrays.stream(
                        row.text("tasks").toLowerCase(Locale.ROOT).split("[|;,/\\s]+"))
                .filter(task -> !task.isEmpty())
                .toList();
        for (String task : typed) {
            if (!CrewAdded.ROLES.contains(task)) {
                row.error(
                        "tasks",
                        "'" + task + "' is no task that is known",
                        "write one or more of " + String.join(" | ", CrewAdded.ROLES));
            }
        }
        return String.join(",", CrewAdded.ROLES.stream().filter(typed::contains).toList());
    }

    @Override
    public void put(Book book, Table table) {
        for (CrewAdded crew : book.day().crew()) {
            String name = book.person(crew.personId());
            String event =
                    crew.eventId().isEmpty() ? "" : book.event(crew.eventId()).name();
            table.line(name, event)
                    .put("name", name)
                    .put("event", event)
                    .put("tasks", crew.roles().replace(",", " | "));
        }
        for (Map.Entry<String, String> person : book.people().entrySet()) {
            if (book.day().crew().stream().noneMatch(c -> c.personId().equals(person.getKey()))) {
                table.line(person.getValue(), "").put("name", person.getValue());
            }
        }
    }
}
