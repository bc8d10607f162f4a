package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;

/**
 * Where numbers of one row came from, and who confirmed each.
 *
 * @param numbers the column that says it of each, {@code by} the one that names who confirmed them
 */
record MarkedNumbers(String numbers, String by) {
    List<Column> columns() {
        return List.of(Column.text(numbers, 400), Column.text(by, 1000));
    }

    /**
     * Takes in what a row says of its numbers.
     *
     * @param of id of what they are numbers of
     * @param number of each thing that was measured, null where the row has none
     * @return what it said
     */
    List<NumberMark> take(Row row, ImportContext context, String of, Function<Measured, @Nullable Double> number) {
        List<NumberMark> told = told(row, number);
        List<@Nullable String> names = confirmedBy(row, context, told);
        for (NumberMark one : told) {
            ValueMarked mark = one.mark(of, one.confirmed() ? names.remove(0) : null);
            context.take(row, "flight.marked", () -> mark);
        }
        return told;
    }

    private List<NumberMark> told(Row row, Function<Measured, @Nullable Double> number) {
        List<NumberMark> told = new ArrayList<>();
        for (String one : row.text(numbers).split("[|]", -1)) {
            if (!one.isBlank()) {
                NumberMark.take(row, numbers, one.strip(), number).ifPresent(told::add);
            }
        }
        return told;
    }

    /** One for each that is confirmed, in their order; one name alone has confirmed all of them. */
    private List<@Nullable String> confirmedBy(Row row, ImportContext context, List<NumberMark> told) {
        long confirmed = told.stream().filter(NumberMark::confirmed).count();
        List<String> names = ConfirmedNames.parse(row.text(by), confirmed);
        List<@Nullable String> persons = new ArrayList<>();
        for (int i = 0; i < confirmed; i++) {
            String name = names.size() == 1 ? names.get(0) : i < names.size() ? names.get(i) : "";
            persons.add(name.isEmpty() ? null : context.person(name));
        }
        if (names.size() > 1 && names.size() != confirmed && !row.isEmpty(by)) {
            row.error(
                    by,
                    names.size() + " places for names, but " + confirmed + " numbers are confirmed",
                    "write one name for all of them, or one for each in the order of the cell " + numbers
                            + ", parted by |");
        }
        return persons;
    }

    /** @param inRow whether the row has a cell of its own that holds this number */
    void put(
            ExportContext book,
            ValueMarks marks,
            Function<Measured, @Nullable Double> number,
            Predicate<Measured> inRow,
            Table.Cells cells) {
        List<ValueMarked> said = Arrays.stream(Measured.values())
                .flatMap(what -> marks.of(what, number.apply(what)).stream())
                .toList();
        cells.put(
                        numbers,
                        said.stream()
                                .map(m ->
                                        NumberMark.of(m, inRow.test(m.about())).text())
                                .collect(Collectors.joining(" | ")))
                .put(
                        by,
                        ConfirmedNames.text(said.stream()
                                .filter(ValueMarked::confirmed)
                                .map(m -> book.person(m.confirmedBy()))
                                .toList()));
    }
}
