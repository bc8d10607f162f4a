package org.skeinday.exchange;

import java.util.List;
import org.skeinday.contest.ModelAdded;
import org.skeinday.motor.Direction;

/** {@code models.csv}: rotorcraft, each with its direction and hook distance. */
final class ModelsFile implements DayFile {
    /** Parts the models of an entry in one cell, so no name may hold it. */
    static final String BETWEEN = "|";

    private static final List<Column> COLUMNS = List.of(
            Column.text("model", 120).filled(),
            Column.text("team", 120).filled(),
            Column.choice("direction", Direction.CW.word(), Direction.WORDS),
            Column.length("hook distance").filled(),
            Column.mass("mass").in(Column.Unit.GRAMS),
            Column.plain("motors").or("1"));

    @Override
    public String name() {
        return "models.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String id = context.newId();
        String name = row.text("model");
        if (name.contains(BETWEEN)) {
            row.error("model", "'" + name + "' has a " + BETWEEN, "leave it out: it parts the models of an entry");
        }
        context.models.add(row, "model", name, "'" + name + "'", id);
        context.busy.named(id, name);
        Quantity hooks = Quantity.Kind.LENGTH.read(row, "hook distance", 20, 2000);
        Quantity mass = Quantity.Kind.MASS.read(row, "mass");
        String direction = row.word("direction");
        Integer motors = Numbers.whole(row, "motors", 1, 2);
        context.take(
                row,
                "model.added",
                () -> new ModelAdded(
                        id,
                        name,
                        row.text("team"),
                        direction,
                        Quantity.si(hooks),
                        Quantity.text(hooks),
                        Quantity.siOrNull(mass),
                        Quantity.textOrNull(mass),
                        motors));
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (ModelAdded model : book.day().models()) {
            table.line(model.name())
                    .of(model.id())
                    .put("model", model.name())
                    .put("team", model.team())
                    .put("direction", model.direction())
                    .put("hook distance", Quantity.Kind.LENGTH.text(model.hookDistanceMm(), model.hookDistanceTyped()))
                    .put("mass", Quantity.Kind.MASS.text(model.massG(), model.massTyped()))
                    .put("motors", Numbers.text(model.motors()));
        }
    }
}
