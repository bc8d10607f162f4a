package org.skeinday.exchange;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Which columns of a plain spreadsheet mean which columns of a file, so that a history kept elsewhere can be taken in by
 * the file's own rules: all of it, or none and every error with its cell.
 *
 * @param file for example flights.csv
 * @param meanings by place in the spreadsheet, from 0; several of one column are joined by a space, as a day and a clock
 *     time are; a place without meaning is left out
 * @param same by column: what every row has, where no place means it
 */
public record ColumnMapping(String file, Map<Integer, Meaning> meanings, Map<String, String> same) {
    /** @param unit as the file's header would name it; empty where cells have their own, or none is needed */
    public record Meaning(String column, String unit) {}

    /**
     * What is wrong in a cell of the spreadsheet.
     *
     * @param row as the spreadsheet counts, from 1; the header is 1
     * @param places of the columns that the cell was made of; empty for the whole row or a column that is missing
     */
    public record WrongCell(int row, List<Integer> places, CellError error) {}

    /** @param facts none as long as anything is wrong */
    public record Taken(List<DayFiles.Named> facts, Map<String, String> names, int rows, List<WrongCell> errors) {}

    /** @throws IllegalArgumentException for a file or column that is not known, or one that has both a place and one value */
    public ColumnMapping {
        meanings = Map.copyOf(meanings);
        same = Map.copyOf(same);
        List<String> known =
                DayFiles.file(file).columns().stream().map(Column::name).toList();
        Set<String> meant = meanings.values().stream().map(Meaning::column).collect(Collectors.toSet());
        for (String column : meant) {
            if (!known.contains(column) || same.containsKey(column)) {
                throw new IllegalArgumentException("A column must be one of " + known
                        + " and have a place or one value, but was '" + column + "'");
            }
        }
        if (!known.containsAll(same.keySet())) {
            throw new IllegalArgumentException("A column must be one of " + known + ", but were " + same.keySet());
        }
    }

    /** What the header's words suggest; for a person to look at. @param header the spreadsheet's first row */
    public static ColumnMapping guess(String file, List<String> header) {
        return new ColumnMapping(file, HeaderGuess.of(DayFiles.file(file).columns(), header), Map.of());
    }

    /** Columns that every row needs and nothing means yet. */
    public List<String> missing() {
        Set<String> meant = meanings.values().stream().map(Meaning::column).collect(Collectors.toSet());
        return columns().stream()
                .filter(Column::must)
                .map(Column::name)
                .filter(name -> !meant.contains(name) && !same.containsKey(name))
                .toList();
    }

    private List<Column> columns() {
        return DayFiles.file(file).columns();
    }

    /** The first rows as they would be taken, by column; what is not meant is not there. */
    public List<Map<String, String>> preview(List<List<String>> rows, int most) {
        return rows.stream()
                .skip(1)
                .filter(ColumnMapping::isFilled)
                .limit(most)
                .map(row -> {
                    Map<String, String> cells = new HashMap<>(same);
                    meanings.values().forEach(m -> cells.put(m.column(), text(m.column(), row)));
                    return Map.copyOf(cells);
                })
                .toList();
    }

    /**
     * Reads all rows against the record.
     *
     * @param rows of the spreadsheet, the header first; empty rows are passed over
     * @param newId makes an id, another one each time
     */
    public Taken take(List<List<String>> rows, Day there, Supplier<String> newId, ZoneId zone) {
        List<CellError> errors = new ArrayList<>(headErrors());
        var context = new ImportContext(there, new Moments(zone, Duration.ZERO), newId);
        int read = 0;
        if (errors.isEmpty()) {
            DayFile known = DayFiles.file(file);
            var sheet = new SheetRows(file, columns(), header(), List.of());
            for (int i = 1; i < rows.size(); i++) {
                if (isFilled(rows.get(i))) {
                    known.take(new Row(sheet, new CsvLines.Line(i + 1, cells(rows.get(i))), errors), context);
                    read++;
                }
            }
            known.finish(context);
        }
        if (errors.isEmpty() && read == 0) {
            errors.add(new CellError(file, 0, "", "there is no row under the header", "choose a sheet with rows"));
        }
        List<WrongCell> wrong = errors.stream().map(this::placed).toList();
        return wrong.isEmpty()
                ? new Taken(context.facts(), context.newPeople(), read, List.of())
                : new Taken(List.of(), Map.of(), read, wrong);
    }

    private static boolean isFilled(List<String> row) {
        return row.stream().anyMatch(cell -> !cell.isBlank());
    }

    private List<CellError> headErrors() {
        List<CellError> errors = new ArrayList<>();
        missing()
                .forEach(column -> errors.add(new CellError(
                        file,
                        1,
                        column,
                        "no column means this and every row needs it",
                        "choose one, or one value for all rows")));
        for (Column column : columns()) {
            String unit = unit(column.name());
            if (!unit.isEmpty()) {
                column.refuses(unit).ifPresent(said -> errors.add(CellError.said(file, 1, column.name(), said)));
            }
        }
        return errors;
    }

    /** Each column of the file at its own place. */
    private Header header() {
        List<String> names = columns().stream().map(Column::name).toList();
        Map<String, Header.Cell> cells = new HashMap<>();
        names.forEach(name -> cells.put(name, new Header.Cell(names.indexOf(name), unit(name))));
        return new Header(
                cells, Set.of(), IntStream.range(0, names.size()).boxed().collect(Collectors.toUnmodifiableSet()));
    }

    private List<String> cells(List<String> row) {
        return columns().stream()
                .map(column -> CellText.guarded(text(column.name(), row).strip()))
                .toList();
    }

    private String unit(String column) {
        return places(column).stream()
                .map(place ->
                        meanings.getOrDefault(place, new Meaning(column, "")).unit())
                .filter(unit -> !unit.isEmpty())
                .findFirst()
                .orElse("");
    }

    private String text(String column, List<String> row) {
        return same.containsKey(column)
                ? same.getOrDefault(column, "")
                : places(column).stream()
                        .filter(place -> place < row.size())
                        .map(place -> row.get(place).strip())
                        .filter(text -> !text.isEmpty())
                        .collect(Collectors.joining(" "));
    }

    private List<Integer> places(String column) {
        return meanings.entrySet().stream()
                .filter(e -> e.getValue().column().equals(column))
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
    }

    private WrongCell placed(CellError error) {
        return new WrongCell(error.line(), places(error.column()), error);
    }
}
