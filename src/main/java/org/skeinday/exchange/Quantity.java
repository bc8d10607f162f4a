package org.skeinday.exchange;

import java.util.function.ToDoubleBiFunction;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

/**
 * A quantity with the text that was typed.
 *
 * @param si in mm, g or N·mm
 * @param text number and unit; the header's unit added where the cell has none. The decimal mark is a point: which one
 *     a file has is its spreadsheet's doing, not the coach's
 */
record Quantity(double si, String text) {
    /** How one kind of quantity is read; {@code unit} is the one that {@code si} is in. */
    enum Kind {
        LENGTH("mm", (text, unit) -> Length.parse(text, unit).millimetres()),
        MASS("g", (text, unit) -> Mass.parse(text, unit).grams()),
        TORQUE("N·mm", (text, unit) -> Torque.parse(text, unit).newtonMillimetres());

        private final String unit;
        private final ToDoubleBiFunction<String, String> reading;

        Kind(String unit, ToDoubleBiFunction<String, String> reading) {
            this.unit = unit;
            this.reading = reading;
        }

        /** Null for an empty cell. */
        @Nullable
        Quantity read(Row row, String column) {
            return read(row, column, 0, Double.MAX_VALUE);
        }

        /** Null for an empty cell; bounds in the unit of {@code si}. */
        @Nullable
        Quantity read(Row row, String column, double least, double most) {
            Quantity quantity = row.read(column, text -> typed(text.replace(',', '.'), row.unit(column)));
            if (quantity != null && (quantity.si < least || quantity.si > most)) {
                row.error(
                        column,
                        "'" + quantity.text + "' is out of bounds",
                        most == Double.MAX_VALUE
                                ? "write at least " + Numbers.text(least) + " " + unit
                                : "write " + Numbers.text(least) + " to " + Numbers.text(most) + " " + unit);
                return null;
            }
            return quantity;
        }

        private Quantity typed(String text, String headerUnit) {
            double si = reading.applyAsDouble(text, headerUnit);
            return new Quantity(si, hasUnit(text) ? text : text + " " + headerUnit);
        }

        private boolean hasUnit(String text) {
            try {
                return reading.applyAsDouble(text, "") >= 0;
            } catch (IllegalArgumentException e) {
                return false;
            }
        }

        /** What was typed, as long as it still means the same number; else that number. */
        String text(@Nullable Double si, @Nullable String typed) {
            if (si == null) {
                return "";
            }
            return typed != null && means(typed, si) ? typed : Numbers.text(si) + " " + unit;
        }

        private boolean means(String typed, double si) {
            try {
                return Double.compare(reading.applyAsDouble(typed, ""), si) == 0;
            } catch (IllegalArgumentException e) {
                return false;
            }
        }
    }

    static double si(@Nullable Quantity quantity) {
        return quantity == null ? 0 : quantity.si;
    }

    static String text(@Nullable Quantity quantity) {
        return quantity == null ? "" : quantity.text;
    }

    static @Nullable Double siOrNull(@Nullable Quantity quantity) {
        return quantity == null ? null : Double.valueOf(quantity.si);
    }

    static @Nullable String textOrNull(@Nullable Quantity quantity) {
        return quantity == null ? null : quantity.text;
    }
}
