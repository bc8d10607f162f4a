package org.skeinday.prepare;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.exchange.Column;

/** What is typed into a form: a bare mass is in the unit of the field's hint; a count may have its unit. */
public final class TypedUnits {
    private static final Pattern BARE =
            Pattern.compile("\\d{1,7}([.,]\\d{1,6})?|(\\d{1,7} )?\\d{1,3}/\\d{1,3}|\\d{1,7} ?[½¼¾⅛]");
    private static final Pattern EXAMPLE = Pattern.compile("for example [\\d.]+ ([a-z]+)$");
    private static final Pattern WITH_NEWTONS = Pattern.compile("(?i)([\\d.,]+) ?(n|newtons?)");
    private static final Pattern WITH_SECONDS = Pattern.compile("(?i)([\\d.,]+) ?(s|sec|seconds?)");
    private static final Pattern WITH_MINUTES = Pattern.compile("(?i)([\\d.,]+) ?(min|minutes?)");

    private TypedUnits() {}

    /** The cell as its file has it: with a unit where the column is a quantity, without one where it is a number. */
    public static String cell(String file, Column column, String typed) {
        String hint = FieldHints.of(file, column.name());
        return switch (column.kind()) {
            case LENGTH -> typed; // inches and millimetres, metres and feet are too easily meant for one another
            case MASS, TORQUE -> withUnit(hint, typed);
            case PLAIN, TIME -> withoutUnit(column.name(), hint, typed);
        };
    }

    private static String withUnit(String hint, String typed) {
        Matcher example = EXAMPLE.matcher(hint);
        return BARE.matcher(typed).matches() && example.find() ? typed + " " + example.group(1) : typed;
    }

    private static String withoutUnit(String column, String hint, String typed) {
        if (hint.startsWith("newtons")) {
            return number(WITH_NEWTONS, typed);
        }
        if (hint.startsWith("seconds")) {
            return number(WITH_SECONDS, typed);
        }
        return column.endsWith("minutes") ? number(WITH_MINUTES, typed) : typed;
    }

    private static String number(Pattern unit, String typed) {
        Matcher parts = unit.matcher(typed);
        return parts.matches() ? parts.group(1) : typed;
    }
}
