package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.motor.BreakPlace;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.MotorStep;
import org.skeinday.units.EnumWords;

/** That a motor broke, and what the coach said of it, as {@code motors.csv} has it; files of before say nothing of it. */
final class MotorBreaks {
    private static final String BROKE = "broke";
    private static final String TURNS = "break turns";
    private static final String TORQUE = "break torque";
    private static final String METER = "break meter";
    private static final String PARTED = "parted";
    private static final String TEST = "break test";
    private static final MarkedNumbers NUMBERS = new MarkedNumbers("break numbers", "break confirmed by");
    private static final String DEVICE = "file";

    /** What no form asks: the Bench does. */
    static final Set<String> NAMES = Set.of(BROKE, TURNS, TORQUE, METER, PARTED, TEST, NUMBERS.numbers(), NUMBERS.by());

    private MotorBreaks() {}

    /** @param own of the file itself */
    static List<Column> after(List<Column> own) {
        List<Column> all = new ArrayList<>(own);
        all.add(Column.plain(BROKE));
        all.add(Column.plain(TURNS));
        all.add(Column.torque(TORQUE));
        all.add(Column.text(METER, 60));
        all.add(Column.choice(PARTED, "", EnumWords.of(BreakPlace.class)));
        all.add(Column.choice(TEST, "", List.of("yes", "no")));
        all.addAll(NUMBERS.columns());
        return List.copyOf(all);
    }

    static void take(Row row, ImportContext context, String motor) {
        if (row.isEmpty(BROKE)) {
            NAMES.stream()
                    .filter(column -> !row.isEmpty(column))
                    .sorted()
                    .findFirst()
                    .ifPresent(column -> row.error(
                            column,
                            "a motor that is whole has none",
                            "write in broke when it broke, or leave this empty"));
            return;
        }
        Long at = context.moments.read(row, BROKE);
        Double turns = Numbers.decimal(row, TURNS, 1, 1_000_000);
        Quantity torque = Quantity.Kind.TORQUE.read(row, TORQUE);
        String parted = row.word(PARTED);
        String test = row.word(TEST);
        if (at == null || row.isWrong()) {
            return;
        }
        String id = context.newId();
        NUMBERS.take(row, context, id, number(turns, Quantity.siOrNull(torque)));
        context.take(
                row,
                "motor.step",
                () -> new MotorStep(
                        id,
                        motor,
                        MotorDeed.BREAK.word(),
                        MotorStage.BROKEN.word(),
                        at,
                        null,
                        DEVICE,
                        null,
                        null,
                        null,
                        null,
                        false,
                        null,
                        null,
                        turns,
                        Quantity.siOrNull(torque),
                        Quantity.textOrNull(torque),
                        row.optional(METER),
                        null,
                        parted.isEmpty() ? null : parted,
                        test.isEmpty() ? null : (Boolean) test.equals("yes")));
    }

    /** Turns of a break are motor turns. */
    private static Function<Measured, @Nullable Double> number(@Nullable Double turns, @Nullable Double torqueNmm) {
        return what -> switch (what) {
            case CRANK_TURNS -> turns;
            case PEAK_TORQUE -> torqueNmm;
            default -> null;
        };
    }

    static void put(ExportContext book, String motor, Table.Cells cells) {
        book.broke(motor)
                .ifPresent(step -> NUMBERS.put(
                        book, book.marks(step.id()), number(step.motorTurns(), step.torqueNmm()), what -> true, cells));
        book.broke(motor)
                .ifPresent(step -> cells.put(BROKE, book.moment(step.atMs()))
                        .put(TURNS, Numbers.text(step.motorTurns()))
                        .put(TORQUE, Quantity.Kind.TORQUE.text(step.torqueNmm(), step.torqueTyped()))
                        .put(METER, text(step.meter()))
                        .put(PARTED, text(step.parted()))
                        .put(TEST, step.test() == null ? "" : step.test() ? "yes" : "no"));
    }

    private static String text(@Nullable String value) {
        return value == null ? "" : value;
    }
}
