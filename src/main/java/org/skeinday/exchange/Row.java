package org.skeinday.exchange;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

/** One line of a file. What cannot be read is noted with its place; the row then counts as wrong. */
final class Row {
    private final Sheet sheet;
    private final CsvRecord record;
    private final List<CellError> errors;
    private boolean wrong;

    Row(Sheet sheet, CsvRecord record, List<CellError> errors) {
        this.sheet = sheet;
        this.record = record;
        this.errors = errors;
    }

    boolean isWrong() {
        return wrong;
    }

    void error(String column, String message) {
        wrong = true;
        errors.add(new CellError(sheet.file(), (int) record.getStartingLineNumber(), column, message));
    }

    String text(String column) {
        return sheet.cell(record, column);
    }

    @Nullable
    String optional(String column) {
        String text = text(column);
        return text.isEmpty() ? null : text;
    }

    String required(String column) {
        String text = text(column);
        if (text.isEmpty()) {
            error(column, "this must be filled in");
        }
        return text;
    }

    /** A word of a list, lower case; {@code otherwise} for an empty cell. */
    String word(String column, String otherwise, List<String> words) {
        String text = text(column).toLowerCase(Locale.ROOT);
        if (text.isEmpty()) {
            return otherwise;
        }
        if (!words.contains(text)) {
            error(column, "'" + text + "' is not known; write " + String.join(", ", words));
        }
        return text;
    }

    boolean yes(String column, boolean otherwise) {
        return word(column, otherwise ? "yes" : "no", List.of("yes", "no")).equals("yes");
    }

    /** A decimal number with point or comma within bounds; null for an empty cell. */
    @Nullable
    Double number(String column, double least, double most) {
        String text = text(column);
        if (text.isEmpty()) {
            return null;
        }
        try {
            double value = Double.parseDouble(text.replace(',', '.'));
            if (value >= least && value <= most) {
                return value;
            }
        } catch (NumberFormatException e) {
            // said below, together with a number that is out of bounds
        }
        error(column, "'" + text + "' must be a number from " + plain(least) + " to " + plain(most));
        return null;
    }

    @Nullable
    Integer whole(String column, int least, int most) {
        Double value = number(column, least, most);
        if (value != null && value != Math.rint(value)) {
            error(column, "'" + text(column) + "' must be a whole number");
            return null;
        }
        return value == null ? null : (int) (double) value;
    }

    int whole(String column, int least, int most, int otherwise) {
        Integer value = whole(column, least, most);
        return value == null ? otherwise : value;
    }

    double number(String column, double least, double most, double otherwise) {
        Double value = number(column, least, most);
        return value == null ? otherwise : value;
    }

    private static String plain(double value) {
        return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    /** A quantity with the text that was typed: number and unit, the header's unit added where the cell has none. */
    record Typed(double si, String text) {}

    @Nullable
    Typed length(String column) {
        return quantity(column, text -> Length.parse(text, unit(column)).millimetres());
    }

    @Nullable
    Typed mass(String column) {
        return quantity(column, text -> Mass.parse(text, unit(column)).grams());
    }

    @Nullable
    Typed torque(String column) {
        return quantity(column, text -> Torque.parse(text, unit(column)).newtonMillimetres());
    }

    private String unit(String column) {
        return sheet.units().getOrDefault(column, "");
    }

    private @Nullable Typed quantity(String column, Function<String, Double> reading) {
        String text = text(column);
        Double value = text.isEmpty() ? null : read(column, reading);
        if (value == null) {
            return null;
        }
        boolean bare = Character.isDigit(text.charAt(text.length() - 1));
        return new Typed(value, bare ? text + " " + unit(column) : text);
    }

    /** Reads a filled cell; null and a noted error when it cannot be read. */
    <T> @Nullable T read(String column, Function<String, T> reading) {
        try {
            return reading.apply(text(column));
        } catch (IllegalArgumentException | java.time.DateTimeException e) {
            error(column, String.valueOf(e.getMessage()));
            return null;
        }
    }

    /** The id behind a name that another file or the record gives. */
    String named(String column, Map<String, String> ids, String what) {
        String name = required(column);
        String id = ids.get(name);
        if (id == null && !name.isEmpty()) {
            error(
                    column,
                    "there is no " + what + " '" + name + "'"
                            + (ids.isEmpty() ? "" : "; known are " + String.join(", ", ids.keySet())));
        }
        return id == null ? "" : id;
    }
}
