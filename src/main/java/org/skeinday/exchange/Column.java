package org.skeinday.exchange;

import java.util.List;
import java.util.Optional;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Misread;
import org.skeinday.units.Torque;

/**
 * One column of a file, for import, export and forms alike.
 *
 * @param must whether every row fills it in
 * @param longest most characters that the record keeps
 * @param words those it may hold, empty for any text
 * @param otherwise what an empty cell means, empty when it means nothing
 * @param unit that a form takes this number in
 */
public record Column(
        String name, Kind kind, boolean must, int longest, List<String> words, String otherwise, Unit unit) {
    /** Which units a header may name for it. */
    public enum Kind {
        PLAIN,
        TIME,
        LENGTH,
        MASS,
        TORQUE
    }

    /** In what a number is typed, as the hint beside it says. */
    public enum Unit {
        /** None, or one that has to be typed. */
        NONE,
        GRAMS,
        NEWTONS,
        SECONDS,
        MINUTES
    }

    private Column(String name, Kind kind, boolean must, int longest, List<String> words, String otherwise) {
        this(name, kind, must, longest, words, otherwise, Unit.NONE);
    }

    private static final int LONGEST_QUANTITY = 40;
    private static final String IN_HEADER = "the header";

    static Column text(String name, int longest) {
        return new Column(name, Kind.PLAIN, false, longest, List.of(), "");
    }

    /** A number, word, day or moment: checked by its own rule. */
    static Column plain(String name) {
        return new Column(name, Kind.PLAIN, false, 80, List.of(), "");
    }

    /** One word of a list; an empty cell is {@code otherwise}. */
    static Column choice(String name, String otherwise, List<String> words) {
        return new Column(name, Kind.PLAIN, false, 80, words, otherwise);
    }

    /** Yes or no; an empty cell is {@code otherwise}. */
    static Column yesNo(String name, String otherwise) {
        return choice(name, otherwise, List.of("yes", "no"));
    }

    static Column time(String name) {
        return new Column(name, Kind.TIME, false, LONGEST_QUANTITY, List.of(), "");
    }

    static Column length(String name) {
        return new Column(name, Kind.LENGTH, false, LONGEST_QUANTITY, List.of(), "");
    }

    static Column mass(String name) {
        return new Column(name, Kind.MASS, false, LONGEST_QUANTITY, List.of(), "");
    }

    static Column torque(String name) {
        return new Column(name, Kind.TORQUE, false, LONGEST_QUANTITY, List.of(), "");
    }

    /** The same, to be filled in on every row. */
    Column filled() {
        return new Column(name, kind, true, longest, words, otherwise, unit);
    }

    /** The same, with what an empty cell means. */
    Column or(String meaning) {
        return new Column(name, kind, must, longest, words, meaning, unit);
    }

    /** The same, typed in this unit. */
    Column in(Unit typed) {
        return new Column(name, kind, must, longest, words, otherwise, typed);
    }

    /** What is wrong with this unit in the header, and what would be right; empty when it can be used. */
    Optional<Misread> refuses(String unit) {
        try {
            switch (kind) {
                case LENGTH -> Length.knowUnit(IN_HEADER, unit);
                case MASS -> Mass.knowUnit(IN_HEADER, unit);
                case TORQUE -> Torque.knowUnit(IN_HEADER, unit);
                case TIME -> {
                    if (!unit.matches("(?i)s|sec|seconds|m:ss|min:s|min:sec")) {
                        return Optional.of(new Misread(
                                "'" + unit + "' is not how a time is read here",
                                "write '" + name + " (s)' or just '" + name + "', and times as 1:23.45 or 83.45"));
                    }
                }
                case PLAIN -> {
                    return Optional.of(new Misread(
                            "this column has no unit, but was given '" + unit + "'", "write just '" + name + "'"));
                }
            }
            return Optional.empty();
        } catch (Misread e) {
            return Optional.of(e);
        }
    }
}
