package org.skeinday.exchange;

import java.util.Optional;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

/**
 * One column of a file, for import and export alike.
 *
 * @param must whether every row fills it in
 * @param longest most characters that the record keeps
 */
record Column(String name, Kind kind, boolean must, int longest) {
    /** Which units a header may name for it. */
    enum Kind {
        PLAIN,
        TIME,
        LENGTH,
        MASS,
        TORQUE
    }

    private static final int LONGEST_QUANTITY = 40;

    static Column text(String name, int longest) {
        return new Column(name, Kind.PLAIN, false, longest);
    }

    /** A number, word, day or moment: checked by its own rule. */
    static Column plain(String name) {
        return new Column(name, Kind.PLAIN, false, 80);
    }

    static Column time(String name) {
        return new Column(name, Kind.TIME, false, LONGEST_QUANTITY);
    }

    static Column length(String name) {
        return new Column(name, Kind.LENGTH, false, LONGEST_QUANTITY);
    }

    static Column mass(String name) {
        return new Column(name, Kind.MASS, false, LONGEST_QUANTITY);
    }

    static Column torque(String name) {
        return new Column(name, Kind.TORQUE, false, LONGEST_QUANTITY);
    }

    /** The same, to be filled in on every row. */
    Column filled() {
        return new Column(name, kind, true, longest);
    }

    /** What is wrong with this unit in the header, and what would be right; empty when it can be used. */
    Optional<String> refuses(String unit) {
        try {
            switch (kind) {
                case LENGTH -> Length.parse("1", unit);
                case MASS -> Mass.parse("1", unit);
                case TORQUE -> Torque.parse("1", unit);
                case TIME -> {
                    if (!unit.matches("(?i)s|sec|seconds|m:ss|min:s|min:sec")) {
                        return Optional.of("'" + unit + "' is not how a time is read here; write '" + name
                                + " (s)' or just '" + name + "', and times as 1:23.45 or 83.45");
                    }
                }
                case PLAIN -> {
                    return Optional.of(
                            "this column has no unit, but was given '" + unit + "'; write just '" + name + "'");
                }
            }
            return Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.of(String.valueOf(e.getMessage()).replace("'1' has", "the header has"));
        }
    }
}
