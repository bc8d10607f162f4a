package org.skeinday.prepare;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.exchange.Column;

/** What is typed into a form: a bare mass is in the unit of its column; a count may have its unit. */
public final class TypedUnits {
    private static final Pattern BARE =
            Pattern.compile("\\d{1,7}([.,]\\d{1,6})?|(\\d{1,7} )?\\d{1,3}/\\d{1,3}|\\d{1,7} ?[½¼¾⅛]");
    private static final Pattern WITH_NEWTONS = Pattern.compile("(?i)([\\d.,]+) ?(n|newtons?)");
    private static final Pattern WITH_SECONDS = Pattern.compile("(?i)([\\d.,]+) ?(s|sec|seconds?)");
    private static final Pattern WITH_MINUTES = Pattern.compile("(?i)([\\d.,]+) ?(min|minutes?)");

    private TypedUnits() {}

    /** The cell as its file has it: with a unit where the column is a quantity, without one where it is a number. */
    public static String cell(Column column, String typed) {
        return switch (column.unit()) {
            case NONE -> typed; // of a length too: inches and millimetres are too easily meant for one another
            case GRAMS -> BARE.matcher(typed).matches() ? typed + " g" : typed;
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
