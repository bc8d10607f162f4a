package org.skeinday.exchange;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** Single rows of the files, for forms: what a form asks and refuses is what a file asks and refuses. */
public final class DayRows {
    /**
     * One row of a file as a form shows it.
     *
     * @param id of the thing that it is about
     * @param cells text by column
     */
    public record RowText(String id, Map<String, String> cells) {
        public RowText {
            cells = Map.copyOf(cells);
        }
    }

    private DayRows() {}

    /** A moment as the cells of files have it. @param ms milliseconds since 1970 UTC */
    public static String moment(long ms, ZoneId zone) {
        return new Moments(zone, Duration.ZERO).text(ms);
    }

    /** What a form asks. @throws IllegalArgumentException when there is no such file */
    public static List<Column> columns(String file) {
        return DayFiles.file(file).columns().stream()
                .filter(column -> !isBeside(column))
                .toList();
    }

    /** What no form asks. */
    private static boolean isBeside(Column column) {
        return FlightMarks.NAMES.contains(column.name())
                || MotorBreaks.NAMES.contains(column.name())
                || UsesOfRows.isBeside(column);
    }

    /** The rows of one file, in the order in which export writes them. */
    public static List<RowText> of(Day day, ZoneId zone, String file) {
        DayFile known = DayFiles.file(file);
        var table = new Table(known.columns());
        known.put(new ExportContext(day, new Moments(zone, Duration.ZERO)), table);
        return table.texts();
    }

    /** One row as {@link #of} has it; empty when there is no such thing. */
    public static Optional<RowText> one(Day day, ZoneId zone, String file, String id) {
        return of(day.only(file, id), zone, file).stream()
                .filter(row -> row.id().equals(id))
                .findFirst();
    }

    /**
     * Reads one row.
     *
     * @param cells text by column; a column that is not there counts as empty
     * @param there what the record has, without the thing itself when it is changed
     * @param newId makes an id, another one each time; the thing's own is asked for first
     */
    public static DayFiles.Read read(
            String file, Map<String, String> cells, Day there, Supplier<String> newId, ZoneId zone) {
        DayFile known = DayFiles.file(file);
        List<CellError> errors = new ArrayList<>();
        List<String> texts = new ArrayList<>();
        Map<String, Header.Cell> header = new LinkedHashMap<>();
        for (Column column : known.columns()) {
            if (isBeside(column) && !cells.containsKey(column.name())) {
                continue; // no form has it: what it says is written beside the row
            }
            header.put(column.name(), new Header.Cell(texts.size(), ""));
            texts.add(CellText.guarded(cells.getOrDefault(column.name(), "").strip()));
        }
        var sheet =
                new SheetRows(file, known.columns(), new Header(header, java.util.Set.of(), allOf(texts)), List.of());
        var context = new ImportContext(there, new Moments(zone, Duration.ZERO), newId);
        known.take(new Row(sheet, new CsvLines.Line(1, texts), errors), context);
        known.finish(context);
        return new DayFiles.Read(context.facts(), context.newPeople(), Map.of(file, 1), List.copyOf(errors));
    }

    private static java.util.Set<Integer> allOf(List<String> texts) {
        return java.util.stream.IntStream.range(0, texts.size())
                .boxed()
                .collect(java.util.stream.Collectors.toUnmodifiableSet());
    }
}
