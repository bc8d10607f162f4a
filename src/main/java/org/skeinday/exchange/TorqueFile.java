package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.motor.TorqueReading;
import org.skeinday.units.Torque;

/**
 * Readings of a torque meter in a file of their own: {@code motor turns, torque}. A column {@code phase} parts winding
 * from unwinding; without it every row was read while winding.
 */
public final class TorqueFile {
    private static final String PHASE = "phase";
    private static final List<String> PHASES = List.of("wind", "unwind");

    private static final List<Column> COLUMNS = List.of(
            Column.plain("motor turns").filled(),
            Column.torque("torque").filled(),
            Column.choice(PHASE, "wind", PHASES));

    private TorqueFile() {}

    /**
     * What was read.
     *
     * @param hasPhases whether the file says which rows are of unwinding
     * @param errors all of them; with one of them the readings must not be used
     */
    public record Read(
            boolean hasPhases, List<TorqueReading> winding, List<TorqueReading> unwinding, List<CellError> errors) {}

    /** @param file its name, for errors */
    public static Read read(String file, String text) {
        List<CellError> errors = new ArrayList<>();
        SheetRows sheet = SheetRows.read(file, text, COLUMNS, errors);
        boolean hasPhases = sheet.header().cells().containsKey(PHASE);
        List<TorqueReading> winding = new ArrayList<>();
        List<TorqueReading> unwinding = new ArrayList<>();
        for (CsvLines.Line line : sheet.rows()) {
            Row row = new Row(sheet, line, errors);
            if (hasPhases && row.isEmpty(PHASE)) {
                row.error(PHASE, "this is empty", "write wind or unwind on every row, or leave the column out");
            }
            boolean unwinds = row.word(PHASE).equals("unwind");
            Double turns = Numbers.decimal(row, "motor turns", 0, 100_000);
            Quantity torque = Quantity.Kind.TORQUE.read(row, "torque");
            if (!row.isWrong() && turns != null && torque != null) {
                (unwinds ? unwinding : winding).add(new TorqueReading(turns, Torque.ofNewtonMillimetres(torque.si())));
            }
        }
        return new Read(hasPhases, List.copyOf(winding), List.copyOf(unwinding), List.copyOf(errors));
    }
}
