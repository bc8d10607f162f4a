package org.skeinday.exchange;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Text as lines of cells, and lines of cells as text (RFC 4180, with \n as line end). The one user of fastcsv. */
final class CsvLines {
    /** What a season's files never reach, by far (own defaults). */
    static final int MOST_ROWS = 100_000;

    static final int MOST_COLUMNS = 200;

    /**
     * The library says in its message alone on which line an open quote began: {@code CsvLinesTest} fails when a newer one
     * says it otherwise.
     */
    private static final Pattern STARTED = Pattern.compile("starting at line (\\d+)");

    /** @param number of the line on which it begins, from 1: a cell in quotes may hold line ends */
    record Line(int number, List<String> cells) {
        boolean isBlank() {
            return cells.stream().allMatch(String::isBlank);
        }
    }

    private CsvLines() {}

    /** Lines that are not blank. Quotes that do not close are an error, and nothing of that file can be trusted. */
    static List<Line> read(String file, String text, List<CellError> errors) {
        return read(file, text, errors, MOST_ROWS, MOST_COLUMNS);
    }

    /** The same of what the program has written itself, however much that is. */
    static List<Line> ownText(String file, String text, List<CellError> errors) {
        return read(file, text, errors, Integer.MAX_VALUE, Integer.MAX_VALUE);
    }

    private static List<Line> read(String file, String text, List<CellError> errors, int mostRows, int mostColumns) {
        if (NotText.is(text)) {
            errors.add(new CellError(
                    file, 0, "", "this is no CSV", "save the table as CSV, or as a workbook whose name ends in .xlsx"));
            return List.of();
        }
        List<Line> lines = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(Separator.of(text))
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(false)
                .skipEmptyLines(true)
                .ofCsvRecord(text)) {
            for (CsvRecord r : reader) {
                int line = (int) r.getStartingLineNumber();
                if (lines.size() > mostRows || r.getFieldCount() > mostColumns) {
                    errors.add(tooMany(file, line));
                    return List.of();
                }
                lines.add(new Line(line, r.getFields()));
            }
        } catch (CsvParseException | java.io.IOException e) {
            errors.add(unreadable(file, lines, String.valueOf(e.getMessage())));
            return List.of();
        }
        lines.removeIf(Line::isBlank);
        return lines;
    }

    private static CellError tooMany(String file, int line) {
        return new CellError(
                file,
                line,
                "",
                "this lies beyond " + MOST_ROWS + " rows or " + MOST_COLUMNS + " columns",
                "keep only the rows and columns that are filled, or bring the file in parts");
    }

    private static CellError unreadable(String file, List<Line> before, String message) {
        Matcher started = STARTED.matcher(message);
        int line = started.find()
                ? Integer.parseInt(started.group(1))
                : before.isEmpty() ? 1 : before.get(before.size() - 1).number() + 1;
        return new CellError(
                file,
                line,
                "",
                "the quotes of a cell that begins here do not close",
                "write \" around the whole cell, and \"\" for a quote inside it");
    }

    static String write(List<List<String>> lines) {
        var text = new StringBuilder();
        for (List<String> line : lines) {
            text.append(String.join(",", line.stream().map(CsvLines::quoted).toList()));
            text.append('\n');
        }
        return text.toString();
    }

    private static String quoted(String cell) {
        boolean plain = cell.equals(cell.strip()) && cell.chars().noneMatch(c -> ",;\t\"\n\r".indexOf(c) >= 0);
        return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
