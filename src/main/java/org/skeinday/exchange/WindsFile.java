package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BreakTrial;
import org.skeinday.motor.StopRule;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/**
 * Winds of one batch in a file of their own, as evidence of breaking: {@code loop, mass, motor turns, broke} or
 * {@code normalised turns, broke} (motor turns · m^0.5 / L0^1.5, inches and grams). Two more columns may stand beside
 * them: {@code motor}, without which every row is a motor of its own, and {@code stop}, what was to end the wind, count
 * when nothing is said.
 */
public final class WindsFile {
    private static final double LEAST = 0.001; // a loop or a mass of nothing is a slip of the keys
    private static final String NORMALISED = "normalised turns";

    private static final Column MOTOR = Column.text("motor", 40);
    private static final Column STOP = Column.choice("stop", StopRule.COUNT.word(), EnumWords.of(StopRule.class));
    private static final Column BROKE = Column.yesNo("broke", "no").filled();

    private static final List<Column> OF_MOTORS = List.of(
            Column.length("loop").filled(),
            Column.mass("mass").filled(),
            Column.plain("motor turns").filled(),
            BROKE,
            MOTOR,
            STOP);
    private static final List<Column> OF_NORMALISED =
            List.of(Column.plain(NORMALISED).filled(), BROKE, MOTOR, STOP);

    private static final Set<String> OF_A_SIZE = Set.of("loop", "mass", "motor turns");

    private WindsFile() {}

    /** How long and how heavy a motor is. */
    public record Size(Length loop, Mass mass) {}

    /**
     * What was read.
     *
     * @param trials in the order of the rows
     * @param sizes the different sizes among them, none when the turns came normalised
     * @param errors all of them; with one of them the trials must not be used
     */
    public record Read(List<BreakTrial> trials, List<Size> sizes, boolean normalised, List<CellError> errors) {
        /** The one size that all motors have. */
        public Optional<Size> onlySize() {
            return sizes.size() == 1 ? Optional.of(sizes.get(0)) : Optional.empty();
        }
    }

    /** @param file its name, for errors */
    public static Read read(String file, String text) {
        boolean normalised = Collections.disjoint(headed(file, text), OF_A_SIZE);
        List<CellError> errors = new ArrayList<>();
        SheetRows sheet = SheetRows.read(file, text, normalised ? OF_NORMALISED : OF_MOTORS, errors);
        List<BreakTrial> trials = new ArrayList<>();
        List<Size> sizes = new ArrayList<>();
        Map<String, Integer> broken = new HashMap<>();
        for (CsvLines.Line line : sheet.rows()) {
            Row row = new Row(sheet, line, errors);
            refuseAfterBreak(row, broken);
            Size size = normalised ? null : size(row);
            Double turns = normalised
                    ? Numbers.decimal(row, NORMALISED, LEAST, 1_000_000)
                    : Numbers.decimal(row, "motor turns", 1, 100_000);
            trial(row, size, turns).ifPresent(trials::add);
            if (size != null && !sizes.contains(size)) {
                sizes.add(size);
            }
        }
        return new Read(List.copyOf(trials), List.copyOf(sizes), normalised, List.copyOf(errors));
    }

    /** The columns of motors that the file has: with none of them it is meant to hold normalised turns. */
    private static Set<String> headed(String file, String text) {
        return SheetRows.read(file, text, OF_MOTORS, new ArrayList<>())
                .header()
                .cells()
                .keySet();
    }

    private static @Nullable Size size(Row row) {
        Quantity loop = Quantity.Kind.LENGTH.read(row, "loop", LEAST, Double.MAX_VALUE);
        Quantity mass = Quantity.Kind.MASS.read(row, "mass", LEAST, Double.MAX_VALUE);
        return loop == null || mass == null ? null : new Size(Length.ofMillimetres(loop.si()), Mass.ofGrams(mass.si()));
    }

    private static Optional<BreakTrial> trial(Row row, @Nullable Size size, @Nullable Double turns) {
        boolean broke = row.yes("broke");
        String motor = row.text("motor").isEmpty() ? "line " + row.line() : row.text("motor");
        String word = row.word("stop");
        if (row.isWrong() || turns == null) {
            return Optional.empty();
        }
        StopRule stop = StopRule.of(word);
        return Optional.of(
                size == null
                        ? new BreakTrial(motor, turns, stop, broke)
                        : BreakTrial.of(motor, turns, size.loop(), size.mass(), stop, broke));
    }

    /** A motor that broke is wound no more: of such rows one must be of another motor. */
    private static void refuseAfterBreak(Row row, Map<String, Integer> broken) {
        String motor = row.text("motor");
        Integer before = motor.isEmpty() ? null : broken.get(motor);
        if (before != null) {
            row.error(
                    "motor",
                    "'" + motor + "' broke on line " + before + " and was wound again on line " + row.line(),
                    "correct the tag or the word broke of one of the two lines, or put the break last");
        } else if (!motor.isEmpty() && row.yes("broke")) {
            broken.put(motor, row.line());
        }
    }
}
