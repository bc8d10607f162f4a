package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;

/**
 * Where a flight and its numbers came from, and who confirmed them, as {@code flights.csv} and {@code attempts.csv} have it.
 * Files without these columns are of before: all in them was typed.
 */
final class FlightMarks {
    private static final String SOURCE = "source";
    private static final String NUMBERS = "numbers";
    private static final String BY = "confirmed by";
    private static final String CONFIRMED = "confirmed";
    private static final String EXAMPLE = "write for example launch-torque offered | time typed confirmed";

    /** What no form asks: it follows from how the form was filled in. */
    static final Set<String> NAMES = Set.of(SOURCE, NUMBERS, BY);

    private FlightMarks() {}

    /** @param own of the file itself */
    static List<Column> after(List<Column> own) {
        List<Column> all = new ArrayList<>(own);
        all.add(Column.choice(SOURCE, "", Source.WORDS));
        all.add(Column.text(NUMBERS, 400));
        all.add(Column.text(BY, 120));
        return List.copyOf(all);
    }

    /**
     * Takes in what a row says of its numbers.
     *
     * @param usual how such a row came where nobody says
     * @param number of each thing that was measured, null where the row has none
     */
    static void take(
            Row row, ImportContext context, String flight, Source usual, Function<Measured, @Nullable Double> number) {
        @Nullable String by = row.isEmpty(BY) || row.text(BY).isEmpty() ? null : context.person(row.text(BY));
        boolean ofFlight = false;
        for (String one : row.text(NUMBERS).split("[|]", -1)) {
            String[] words = one.strip().split("\\s+", -1);
            if (!words[0].isEmpty()) {
                ofFlight |= words[0].equals(Measured.FLIGHT.word());
                take(row, context, flight, words, number, by);
            }
        }
        String source = row.word(SOURCE);
        if (!source.isEmpty() && !ofFlight && Source.of(source) != usual) {
            mark(row, context, new ValueMarked(flight, Measured.FLIGHT.word(), null, source, false, null, null));
        }
    }

    private static void take(
            Row row,
            ImportContext context,
            String flight,
            String[] words,
            Function<Measured, @Nullable Double> number,
            @Nullable String by) {
        boolean confirmed = words.length == 3 && words[2].equals(CONFIRMED);
        if (words.length < 2 || words.length > (confirmed ? 3 : 2)) {
            row.error(NUMBERS, "'" + String.join(" ", words) + "' does not say which number came from where", EXAMPLE);
            return;
        }
        Measured what = row.read(NUMBERS, text -> Measured.of(words[0]));
        Source source = row.read(NUMBERS, text -> Source.of(words[1]));
        if (what == null || source == null) {
            return;
        }
        Double told = number.apply(what);
        if (told == null && what != Measured.FLIGHT) {
            row.error(NUMBERS, "this row has no " + what.words(), "leave it out of this cell, or write the number");
            return;
        }
        mark(
                row,
                context,
                new ValueMarked(flight, what.word(), told, source.word(), confirmed, confirmed ? by : null, null));
    }

    private static void mark(Row row, ImportContext context, ValueMarked mark) {
        context.take(row, "flight.marked", () -> mark);
    }

    /** @param usual how such a row came where nobody says @param number as {@link #take} */
    static void put(
            ExportContext book,
            String flight,
            Source usual,
            Function<Measured, @Nullable Double> number,
            Table.Cells cells) {
        List<ValueMarked> marks = book.day().more().marks().stream()
                .filter(m -> m.flightId().equals(flight) && Objects.equals(m.number(), number.apply(m.about())))
                .sorted(Comparator.comparing(ValueMarked::about))
                .toList();
        cells.put(
                        SOURCE,
                        marks.stream()
                                .filter(m -> m.about() == Measured.FLIGHT)
                                .map(ValueMarked::source)
                                .findFirst()
                                .orElse(usual.word()))
                .put(
                        NUMBERS,
                        marks.stream()
                                .map(m -> m.measured() + " " + m.source() + (m.confirmed() ? " " + CONFIRMED : ""))
                                .collect(Collectors.joining(" | ")))
                .put(
                        BY,
                        marks.stream()
                                .map(ValueMarked::confirmedBy)
                                .filter(Objects::nonNull)
                                .findFirst()
                                .map(book::person)
                                .orElse(""));
    }
}
