package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EntryMotor;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.EventAdded;

/** {@code entries.csv}: who takes part in which event with which models. */
final class EntriesFile implements DayFile {
    private static final List<Column> COLUMNS = columnsAndTasks();

    private static List<Column> columnsAndTasks() {
        List<Column> columns = new ArrayList<>(List.of(
                Column.text("event", 120),
                Column.text("entry", 120).filled(),
                Column.text("team", 120).filled(),
                Column.text("division", 60),
                Column.yesNo("own", "no"),
                Column.text("models", 4000),
                Column.text("motors", 4000),
                Column.plain("call order")));
        CrewAdded.ROLES.forEach(task -> columns.add(Column.text(task, 120)));
        return List.copyOf(columns);
    }

    @Override
    public String name() {
        return "entries.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String event = context.event(row);
        String id = context.newId();
        String name = row.text("entry");
        context.entries.add(row, "entry", name.isEmpty() ? "" : ImportContext.key(event, name), "'" + name + "'", id);
        boolean own = row.yes("own");
        Integer order = Numbers.whole(row, "call order", 1, 999);
        List<String> models = row.allNamed("models", context.models);
        List<String> motors = row.allNamed("motors", context.motors);
        context.busy.flies(id, name, models);
        context.declared.check(row, event, id, motors, context.motors);
        context.take(
                row,
                "entry.added",
                () -> new EntryAdded(id, event, name, row.text("team"), row.optional("division"), own, order));
        models.forEach(model -> context.take(row, "entry.model", () -> new EntryModel(id, model)));
        motors.forEach(motor -> context.take(row, "entry.motor", () -> new EntryMotor(id, motor)));
        tasks(row, context, event, id);
    }

    private static void tasks(Row row, ImportContext context, String event, String entry) {
        for (String task : CrewAdded.ROLES) {
            String person = row.named(task, context.people);
            if (!person.isEmpty() && !context.clearances.has(person, event, task)) {
                row.error(
                        task,
                        row.text(task) + " has no clearance for this task",
                        "choose somebody who " + task + ", or add the task to that person's line of the crew");
            }
            if (!person.isEmpty()) {
                context.take(row, "entry.task", () -> new EntryTask(entry, task, person));
            }
        }
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (EntryAdded entry : book.day().entries()) {
            EventAdded event = book.event(entry.eventId());
            Table.Cells cells = table.line(event.day(), event.name(), entry.name())
                    .of(entry.id())
                    .put("event", event.name())
                    .put("entry", entry.name())
                    .put("team", entry.team())
                    .put("division", entry.division())
                    .put("own", entry.own() ? "yes" : "no")
                    .put(
                            "models",
                            names(book, EntryModel::modelId, own(book.day().entryModels(), entry)))
                    .put("motors", names(book, EntryMotor::motorId, declared(book, entry)))
                    .put("call order", Numbers.text(entry.callOrder()));
            book.day().more().entryTasks().stream()
                    .filter(task -> task.entryId().equals(entry.id()))
                    .forEach(task -> cells.put(task.task(), book.person(task.personId())));
        }
    }

    private static List<EntryModel> own(List<EntryModel> all, EntryAdded entry) {
        return all.stream().filter(has -> has.entryId().equals(entry.id())).toList();
    }

    private static List<EntryMotor> declared(ExportContext book, EntryAdded entry) {
        return book.day().more().entryMotors().stream()
                .filter(has -> has.entryId().equals(entry.id()))
                .toList();
    }

    private static <T> String names(ExportContext book, Function<T, String> id, List<T> all) {
        return all.stream()
                .map(one -> book.name(id.apply(one)))
                .sorted()
                .collect(Collectors.joining(" " + ModelsFile.BETWEEN + " "));
    }
}
