package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.skeinday.winding.HeldDoubts;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.WindJudged;

/**
 * What was read while the motor of an attempt was held, as {@code attempts.csv} has it, which readings were asked about and were so
 * ({@code 7.8 in-ozf at 0:40 confirmed}), how finely its meter is read, and why it enters no fit where it does not. It is kept under the id of the attempt, as its wind is, see {@link WindOfRow}.
 */
final class HeldCells {
    private static final String HELD = "held";
    private static final String STEP = "held to";
    private static final String OUT = "hold left out";
    private static final Pattern SO = Pattern.compile("(?i)\\s+confirmed\\s*(?=$|;|\\R|,\\s)");

    private HeldCells() {}

    /** @param own of the file itself */
    static List<Column> after(List<Column> own) {
        List<Column> all = new ArrayList<>(own);
        all.add(Column.text(HELD, 1000));
        all.add(Column.torque(STEP));
        all.add(Column.text(OUT, 400));
        return List.copyOf(all);
    }

    /** @return whether there are any */
    static boolean take(Row row, ImportContext context, String attempt) {
        Quantity step = Quantity.Kind.TORQUE.read(row, STEP);
        List<HeldRead> typed =
                row.read(HELD, text -> HeldRead.parse(SO.matcher(text).replaceAll(""), "", null));
        if (typed == null || row.isWrong()) {
            return false;
        }
        double least = step == null ? 0 : step.si();
        List<HeldRead> held = typed.stream()
                .map(read -> new HeldRead(
                        read.seconds(), read.torqueNmm(), Math.max(least, read.resolutionNmm()), read.typed()))
                .toList();
        context.take(row, "wind.held", () -> new WindHeld(attempt, held));
        List<String> cells = HeldRead.parted(row.text(HELD));
        for (int i = 0; i < held.size(); i++) {
            if (SO.matcher(cells.get(i)).find()) {
                String doubt = HeldDoubts.id(attempt, held.get(i));
                context.take(row, "wind.confirmed", () -> new WindConfirmed(doubt, attempt));
            }
        }
        if (!row.isEmpty(OUT)) {
            context.take(row, "wind.judged", () -> new WindJudged(attempt, row.text(OUT), null, 0));
        }
        return !held.isEmpty();
    }

    static void put(ExportContext book, String attempt, Table.Cells cells) {
        book.held(attempt)
                .ifPresent(held -> cells.put(
                                HELD,
                                held.readings().stream()
                                        .map(read ->
                                                read.typed() + (book.isConfirmed(attempt, read) ? " confirmed" : ""))
                                        .collect(Collectors.joining("; ")))
                        .put(STEP, Quantity.Kind.TORQUE.text(finest(held.readings()), null))
                        .put(OUT, book.heldOut(attempt)));
    }

    /** No reading was finer than the meter: with its digits this gives each its own step again. */
    private static double finest(List<HeldRead> readings) {
        return readings.stream().mapToDouble(HeldRead::resolutionNmm).min().orElse(0);
    }
}
