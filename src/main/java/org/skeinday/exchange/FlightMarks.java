package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;

/**
 * Where a flight and its numbers came from, and who confirmed each, as {@code flights.csv} and {@code attempts.csv} have it.
 * Files without these columns are of before: all in them was typed. Where the columns stand and a row says nothing, somebody
 * has written that row into the file.
 */
final class FlightMarks {
    private static final String SOURCE = "source";
    private static final MarkedNumbers NUMBERS = new MarkedNumbers("numbers", "confirmed by");

    /** What no form asks: it follows from how the form was filled in. */
    static final Set<String> NAMES = Set.of(SOURCE, NUMBERS.numbers(), NUMBERS.by());

    private FlightMarks() {}

    /** @param own of the file itself */
    static List<Column> after(List<Column> own) {
        List<Column> all = new ArrayList<>(own);
        all.add(Column.choice(SOURCE, "", Source.WORDS));
        all.addAll(NUMBERS.columns());
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
        List<NumberMark> told = NUMBERS.take(row, context, flight, number);
        Source source = source(row, usual);
        if (source != usual && told.stream().noneMatch(one -> one.what() == Measured.FLIGHT)) {
            context.take(
                    row,
                    "flight.marked",
                    () -> new ValueMarked(flight, Measured.FLIGHT.word(), null, source.word(), false, null, null));
        }
    }

    private static Source source(Row row, Source usual) {
        String source = row.word(SOURCE);
        if (!source.isEmpty()) {
            return Source.of(source);
        }
        return row.has(SOURCE) && usual == Source.TYPED ? Source.FILE : usual;
    }

    /**
     * @param usual how such a row came where nobody says
     * @param number of each thing that was measured, of the flight as it stands
     * @param inRow whether the row has a cell of its own that holds this number
     */
    static void put(
            ExportContext book,
            ValueMarks marks,
            Source usual,
            Function<Measured, @Nullable Double> number,
            Predicate<Measured> inRow,
            Table.Cells cells) {
        cells.put(SOURCE, marks.flight().map(ValueMarked::source).orElse(usual.word()));
        NUMBERS.put(book, marks, number, inRow, cells);
    }
}
