package org.skeinday.units;

import java.util.regex.Pattern;

/** A number that was typed without its unit: it is in the unit that stands under its field. */
public final class BareNumber {
    private static final Pattern BARE =
            Pattern.compile("\\d{1,7}([.,]\\d{1,18})?|[.,]\\d{1,18}|(\\d{1,7}[ -])?\\d{1,3}/\\d{1,3}|\\d{1,7} ?[½¼¾⅛]");

    private BareNumber() {}

    /** A quantity as it was typed, with this unit where it had none. @param unit empty where none stands under the field */
    public static String with(String typed, String unit) {
        String text = typed.strip();
        return !unit.isEmpty() && BARE.matcher(text).matches() ? text + " " + unit : text;
    }
}
