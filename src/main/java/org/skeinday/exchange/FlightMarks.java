package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
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
    private static final String NUMBERS = "numbers";
    private static final String BY = "confirmed by";

    /** What no form asks: it follows from how the form was filled in. */
    static final Set<String> NAMES = Set.of(SOURCE, NUMBERS, BY);

    private FlightMarks() {}

    /** @param own of the file itself */
    static List<Column> after(List<Column> own) {
        List<Column> all = new ArrayList<>(own);
        all.add(Column.choice(SOURCE, "", Source.WORDS));
        all.add(Column.text(NUMBERS, 400));
        all.add(Column.text(BY, 1000));
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
        List<NumberMark> told = told(row, number);
        List<@Nullable String> by = confirmedBy(row, context, told);
        for (NumberMark one : told) {
            ValueMarked mark = one.mark(flight, one.confirmed() ? by.remove(0) : null);
            context.take(row, "flight.marked", () -> mark);
        }
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

    private static List<NumberMark> told(Row row, Function<Measured, @Nullable Double> number) {
        List<NumberMark> told = new ArrayList<>();
        for (String one : row.text(NUMBERS).split("[|]", -1)) {
            if (!one.isBlank()) {
                NumberMark.take(row, NUMBERS, one.strip(), number).ifPresent(told::add);
            }
        }
        return told;
    }

    /** One for each that is confirmed, in their order; one name alone has confirmed all of them. */
    private static List<@Nullable String> confirmedBy(Row row, ImportContext context, List<NumberMark> told) {
        long confirmed = told.stream().filter(NumberMark::confirmed).count();
        List<String> names = ConfirmedNames.parse(row.text(BY), confirmed);
        List<@Nullable String> by = new ArrayList<>();
        for (int i = 0; i < confirmed; i++) {
            String name = names.size() == 1 ? names.get(0) : i < names.size() ? names.get(i) : "";
            by.add(name.isEmpty() ? null : context.person(name));
        }
        if (names.size() > 1 && names.size() != confirmed && !row.isEmpty(BY)) {
            row.error(
                    BY,
                    names.size() + " places for names, but " + confirmed + " numbers are confirmed",
                    "write one name for all of them, or one for each in the order of the cell numbers, parted by |");
        }
        return by;
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
        List<ValueMarked> said = Arrays.stream(Measured.values())
                .flatMap(what -> marks.of(what, number.apply(what)).stream())
                .toList();
        cells.put(SOURCE, marks.flight().map(ValueMarked::source).orElse(usual.word()))
                .put(
                        NUMBERS,
                        said.stream()
                                .map(m ->
                                        NumberMark.of(m, inRow.test(m.about())).text())
                                .collect(Collectors.joining(" | ")))
                .put(
                        BY,
                        ConfirmedNames.text(said.stream()
                                .filter(ValueMarked::confirmed)
                                .map(m -> book.person(m.confirmedBy()))
                                .toList()));
    }
}
