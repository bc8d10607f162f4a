package org.skeinday.exchange;

import java.util.List;
import org.skeinday.motor.Direction;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorInspected;
import org.skeinday.motor.MotorPlace;

/** {@code motors.csv}: loops tied from the batches. */
final class MotorsFile implements DayFile {
    private static final List<Column> COLUMNS = MotorBreaks.after(List.of(
            Column.text("tag", 40).filled(),
            Column.text("batch", 120).filled(),
            Column.text("team", 120).filled(),
            Column.choice("direction", Direction.CW.word(), Direction.WORDS),
            Column.length("loop").filled(),
            Column.mass("mass").in(Column.Unit.GRAMS).filled(),
            Column.plain("breaking turns"),
            Column.plain("uses").or("0"),
            Column.mass("inspected mass").in(Column.Unit.GRAMS),
            Column.choice("place", "", MotorInspected.PLACES),
            Column.plain("inspected")));

    @Override
    public String name() {
        return "motors.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String id = context.newId();
        String tag = row.text("tag");
        if (tag.contains(ModelsFile.BETWEEN)) {
            row.error(
                    "tag",
                    "'" + tag + "' has a " + ModelsFile.BETWEEN,
                    "leave it out: it parts the motors of an entry");
        }
        if (tag.codePoints().anyMatch(Character::isISOControl)) {
            row.error(
                    "tag", "the tag has a line break or a tab in it", "write it in one line, as it stands on the bag");
        }
        context.motors
                .alike(tag)
                .ifPresent(other -> row.error(
                        "tag",
                        "'" + tag + "' is told from '" + other + "' by capital letters only",
                        "give one of the two motors another tag: in the hall they are taken for each other"));
        context.motors.add(row, "tag", tag, "'" + tag + "'", id);
        String batch = row.named("batch", context.batches);
        Quantity loop = Quantity.Kind.LENGTH.read(row, "loop", MotorAdded.LEAST_LOOP_MM, MotorAdded.MOST_LOOP_MM);
        Quantity mass = Quantity.Kind.MASS.read(row, "mass", MotorAdded.LEAST_MASS_G, MotorAdded.MOST_MASS_G);
        Integer breaking = Numbers.whole(row, "breaking turns", 50, 100_000);
        int uses = Numbers.whole(row, "uses", 0, MotorAdded.MOST_USES, 0);
        String direction = row.word("direction");
        Quantity inspected =
                Quantity.Kind.MASS.read(row, "inspected mass", MotorAdded.LEAST_MASS_G, MotorAdded.MOST_MASS_G);
        Long at = context.moments.read(row, "inspected");
        String place = row.word("place");
        context.declared.weighs(id, inspected != null ? inspected : mass);
        String weighed = inspected != null ? "inspected mass" : "mass";
        context.declared
                .entriesOf(id)
                .forEach(entry -> context.declared
                        .over(entry, id)
                        .ifPresent(over -> Declared.noteOver(row, weighed, tag + over)));
        context.take(
                row,
                "motor.added",
                () -> new MotorAdded(
                        id,
                        tag,
                        batch,
                        row.text("team"),
                        direction,
                        Quantity.si(loop),
                        Quantity.text(loop),
                        Quantity.si(mass),
                        Quantity.text(mass),
                        breaking,
                        uses));
        boolean noted = inspected != null || at != null || !place.isEmpty() || context.isInspected(id);
        if (noted) {
            context.take(
                    row,
                    "motor.inspected",
                    () -> new MotorInspected(
                            id,
                            Quantity.siOrNull(inspected),
                            Quantity.textOrNull(inspected),
                            place.isEmpty() ? MotorPlace.TEAM.word() : place,
                            at));
        }
        MotorBreaks.take(row, context, id);
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (MotorAdded motor : book.day().motors()) {
            var inspected = book.inspection(motor.id());
            Table.Cells cells = table.line(motor.tag())
                    .of(motor.id())
                    .put("tag", motor.tag())
                    .put("batch", book.name(motor.batchId()))
                    .put("team", motor.team())
                    .put("direction", motor.direction())
                    .put("loop", Quantity.Kind.LENGTH.text(motor.loopMm(), motor.loopTyped()))
                    .put("mass", Quantity.Kind.MASS.text(motor.massG(), motor.massTyped()))
                    .put("breaking turns", Numbers.text(motor.breakingTurns()))
                    .put("uses", Numbers.text(motor.uses()))
                    .put(
                            "inspected mass",
                            inspected
                                    .map(i -> Quantity.Kind.MASS.text(i.massG(), i.massTyped()))
                                    .orElse(""))
                    .put("place", inspected.map(MotorInspected::place).orElse(""))
                    .put("inspected", inspected.map(i -> book.moment(i.atMs())).orElse(""));
            MotorBreaks.put(book, motor.id(), cells);
        }
    }
}
