package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.WindHeld;

/**
 * What was read while the motor of an attempt was held, as {@code attempts.csv} has it, and how finely its meter is read. It is
 * kept with the attempt, since no file has its wind.
 */
final class HeldCells {
    private static final String HELD = "held";
    private static final String STEP = "held to";

    private HeldCells() {}

    /** @param own of the file itself */
    static List<Column> after(List<Column> own) {
        List<Column> all = new ArrayList<>(own);
        all.add(Column.text(HELD, 1000));
        all.add(Column.torque(STEP));
        return List.copyOf(all);
    }

    static void take(Row row, ImportContext context, String attempt) {
        Quantity step = Quantity.Kind.TORQUE.read(row, STEP);
        List<HeldRead> typed = row.read(HELD, text -> HeldRead.parse(text, "", null));
        if (typed == null || row.isWrong()) {
            return;
        }
        double least = step == null ? 0 : step.si();
        List<HeldRead> held = typed.stream()
                .map(read -> new HeldRead(
                        read.seconds(), read.torqueNmm(), Math.max(least, read.resolutionNmm()), read.typed()))
                .toList();
        context.take(row, "wind.held", () -> new WindHeld(attempt, held));
    }

    static void put(ExportContext book, String attempt, Table.Cells cells) {
        book.held(attempt)
                .ifPresent(held -> cells.put(
                                HELD,
                                held.readings().stream().map(HeldRead::typed).collect(Collectors.joining("; ")))
                        .put(STEP, Quantity.Kind.TORQUE.text(finest(held.readings()), null)));
    }

    /** No reading was finer than the meter: with its digits this gives each its own step again. */
    private static double finest(List<HeldRead> readings) {
        return readings.stream().mapToDouble(HeldRead::resolutionNmm).min().orElse(0);
    }
}
