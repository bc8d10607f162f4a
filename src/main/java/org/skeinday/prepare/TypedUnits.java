package org.skeinday.prepare;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.exchange.Column;
import org.skeinday.units.BareNumber;
import org.skeinday.units.UnitSystem;

/** What is typed into a form: a bare number is in the unit that stands under its field; a count may have its unit. */
public final class TypedUnits {
    private static final Pattern WITH_NEWTONS = Pattern.compile("(?i)([\\d.,]+) ?(n|newtons?)");
    private static final Pattern WITH_SECONDS = Pattern.compile("(?i)([\\d.,]+) ?(s|sec|seconds?)");
    private static final Pattern WITH_MINUTES = Pattern.compile("(?i)([\\d.,]+) ?(min|minutes?)");

    /** Halls and lanes are in metres or feet, everything smaller in millimetres or inches. */
    private static final Set<String> ROOMS = Set.of("ceiling", "lane");

    private TypedUnits() {}

    /** In which unit the team takes a bare number of this column; empty for what has none, or its own. */
    public static String under(Column column, UnitSystem units) {
        return switch (column.kind()) {
            case LENGTH -> ROOMS.contains(column.name()) ? units.roomUnit() : units.lengthUnit();
            case MASS -> units.massUnit();
            case TORQUE -> units.torqueUnitTyped();
            case PLAIN, TIME -> "";
        };
    }

    /**
     * The cell as its file has it: with a unit where the column is a quantity, without one where it is a number.
     *
     * @param under the unit that stood under the field; empty where none did
     */
    public static String cell(Column column, String typed, String under) {
        return switch (column.unit()) {
            case NONE, GRAMS -> BareNumber.with(typed, under);
            case NEWTONS -> number(WITH_NEWTONS, typed);
            case SECONDS -> number(WITH_SECONDS, typed);
            case MINUTES -> number(WITH_MINUTES, typed);
        };
    }

    private static String number(Pattern unit, String typed) {
        Matcher parts = unit.matcher(typed);
        return parts.matches() ? parts.group(1) : typed;
    }
}
