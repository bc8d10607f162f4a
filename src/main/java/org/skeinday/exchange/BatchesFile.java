package org.skeinday.exchange;

import java.time.LocalDate;
import java.util.List;
import org.skeinday.motor.BatchAdded;

/** {@code batches.csv}: lots of strip. */
final class BatchesFile implements DayFile {
    private static final List<Column> COLUMNS = List.of(
            Column.text("batch", 120).filled(),
            Column.length("width"),
            Column.length("thickness"),
            Column.plain("k"),
            Column.plain("opened"));

    @Override
    public String name() {
        return "batches.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String id = context.newId();
        String name = row.text("batch");
        context.batches.add(row, "batch", name, "'" + name + "'", id);
        Quantity width = Quantity.Kind.LENGTH.read(row, "width", 0.1, 100);
        Quantity thickness = Quantity.Kind.LENGTH.read(row, "thickness", 0.1, 20);
        Double k = Numbers.decimal(row, "k", 10, 100);
        LocalDate opened = Numbers.day(row, "opened");
        context.take(
                row,
                "batch.added",
                () -> new BatchAdded(
                        id,
                        name,
                        Quantity.siOrNull(width),
                        Quantity.textOrNull(width),
                        Quantity.siOrNull(thickness),
                        Quantity.textOrNull(thickness),
                        k,
                        opened == null ? null : opened.toString()));
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (BatchAdded batch : book.day().batches()) {
            table.line(batch.name())
                    .of(batch.id())
                    .put("batch", batch.name())
                    .put("width", Quantity.Kind.LENGTH.text(batch.widthMm(), batch.widthTyped()))
                    .put("thickness", Quantity.Kind.LENGTH.text(batch.thicknessMm(), batch.thicknessTyped()))
                    .put("k", Numbers.text(batch.kInchGram()))
                    .put("opened", batch.openedDay());
        }
    }
}
