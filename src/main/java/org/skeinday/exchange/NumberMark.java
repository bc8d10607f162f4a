package org.skeinday.exchange;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.units.FlightTime;

/**
 * Where one number of a row came from, as its cell says it: {@code launch-torque offered} or {@code time tap confirmed}, of what is still
 * asked about it elsewhere {@code peak-torque tap asked}; with
 * the time itself, {@code time=1:43.620 tap}, where the row has none of its own, since no official time was made yet.
 *
 * @param number in the record's own unit, null for the flight itself
 * @param inRow whether a cell of the row holds the number
 */
record NumberMark(
        Measured what, @Nullable Double number, Source source, boolean confirmed, boolean asked, boolean inRow) {
    private static final Pattern TEXT = Pattern.compile("([a-z-]+)(?:=(\\S+))?\\s+([a-z]+)(\\s+confirmed|\\s+asked)?");
    private static final String EXAMPLE = "write for example launch-torque offered | time typed confirmed";

    static NumberMark of(ValueMarked mark, boolean inRow) {
        return new NumberMark(mark.about(), mark.number(), mark.from(), mark.confirmed(), mark.isAsked(), inRow);
    }

    /** Reads one; empty, and an error noted, for what is none. @param number that the row has of each, null for none */
    static Optional<NumberMark> take(Row row, String column, String text, Function<Measured, @Nullable Double> number) {
        Matcher parts = TEXT.matcher(text.toLowerCase(Locale.ROOT));
        if (!parts.matches()) {
            row.error(column, "'" + text + "' does not say which number came from where", EXAMPLE);
            return Optional.empty();
        }
        Measured what = row.read(column, all -> Measured.of(parts.group(1)));
        Source source = row.read(column, all -> Source.of(parts.group(3)));
        if (what == null || source == null) {
            return Optional.empty();
        }
        Double told = number.apply(what);
        boolean inRow = told != null || what == Measured.FLIGHT;
        String beside = parts.group(2);
        if (beside != null) {
            if (inRow || what != Measured.TIME) {
                row.error(column, "'" + text + "' has a number, which stands in the row itself", EXAMPLE);
                return Optional.empty();
            }
            told = row.read(column, all -> (double) FlightTime.parse(beside).millis());
        } else if (!inRow) {
            row.error(column, "this row has no " + what.words(), "leave it out of this cell, or write the number");
        }
        String word = parts.group(4) == null ? "" : parts.group(4).strip();
        return told == null && what != Measured.FLIGHT
                ? Optional.empty()
                : Optional.of(
                        new NumberMark(what, told, source, word.equals("confirmed"), word.equals("asked"), inRow));
    }

    /** @param by who confirmed it, null where nobody is named */
    ValueMarked mark(String flight, @Nullable String by) {
        return new ValueMarked(
                flight, what.word(), number, source.word(), confirmed, by, null, asked ? Boolean.TRUE : null);
    }

    String text() {
        String beside = inRow || number == null ? "" : "=" + Numbers.time(Math.round(number));
        return what.word() + beside + " " + source.word() + (confirmed ? " confirmed" : asked ? " asked" : "");
    }
}
