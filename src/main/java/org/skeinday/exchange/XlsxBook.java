package org.skeinday.exchange;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;

/**
 * The same files as one workbook (XLSX, ISO/IEC 29500), a sheet for each. The one user of fastexcel. A cell that is a
 * number and nothing else is a number; any other is text in a cell kept for text, so that nothing is ever run, nor when
 * it is edited. Reading gives the texts back as the files would have them; rules and errors are theirs.
 */
public final class XlsxBook {
    /** What follows it is a number of a character: a text that happens to hold such a thing is written so, too. */
    private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{4})_");

    private static final Pattern LIKE_ESCAPE = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");

    private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9]\\d{0,14})(\\.\\d{0,13}[1-9])?");
    private static final Pattern DATE_FORMAT = Pattern.compile("(?i).*[ydhs].*");
    private static final int MOST_DIGITS = 15;
    private static final String ENDING = ".csv";

    private XlsxBook() {}

    /** What a season's workbook never reaches, by far (own defaults); a hostile one is not opened, or no further. */
    private static final long MOST_INFLATED = 64L * 1024 * 1024;

    private static final int MOST_PARTS = 500;

    /** @param texts by file name, as export writes them */
    public static byte[] write(Map<String, String> texts) {
        var bytes = new ByteArrayOutputStream();
        try (Workbook book = new Workbook(bytes, "Skeinday", "1.0")) {
            texts.forEach((file, text) -> write(book.newWorksheet(file.replace(ENDING, "")), file, text));
        } catch (IOException e) {
            throw new IllegalStateException("Bytes in memory cannot fail to be written", e);
        }
        return bytes.toByteArray();
    }

    private static void write(Worksheet sheet, String file, String text) {
        List<CellError> errors = new ArrayList<>();
        List<CsvLines.Line> lines = CsvLines.ownText(file, text, errors);
        if (!errors.isEmpty()) {
            throw new IllegalArgumentException("The texts must be as export writes them, but "
                    + errors.get(0).text());
        }
        sheet.freezePane(0, 1);
        for (int r = 0; r < lines.size(); r++) {
            List<String> cells = lines.get(r).cells();
            for (int c = 0; c < cells.size(); c++) {
                write(sheet, r, c, CellText.unguarded(cells.get(c)));
            }
        }
    }

    private static void write(Worksheet sheet, int row, int column, String text) {
        if (text.isEmpty()) {
            return;
        }
        if (row > 0 && isNumber(text)) {
            sheet.value(row, column, new BigDecimal(text));
            return;
        }
        sheet.value(row, column, LIKE_ESCAPE.matcher(text).replaceAll("_x005F_"));
        if (row == 0) {
            sheet.style(row, column).bold().format("@").set();
        } else {
            sheet.style(row, column).format("@").set();
        }
    }

    /** Whether it would be read back as it is: without a zero too many, and no longer than a spreadsheet reckons. */
    static boolean isNumber(String text) {
        return NUMBER.matcher(text).matches()
                && !text.equals("-0")
                && text.chars().filter(Character::isDigit).count() <= MOST_DIGITS;
    }

    /** @param name of the workbook, for its errors */
    public static Unpacked read(String name, byte[] bytes) {
        try {
            return isTooLarge(bytes)
                    ? refused(name, "this workbook is too large", "keep only the sheets that are to be taken in")
                    : unfolded(bytes);
        } catch (TooMany e) {
            return refused(
                    name,
                    String.valueOf(e.getMessage()),
                    "keep only the rows, columns and texts that are to be taken in");
        } catch (IOException | RuntimeException e) { // its reader has one for each thing that a workbook may lack
            return refused(name, "this is no workbook that can be read", "save it as .xlsx and try again");
        }
    }

    private static Unpacked unfolded(byte[] bytes) throws IOException {
        Map<String, String> texts = new LinkedHashMap<>();
        CellLengths lengths = new CellLengths();
        try (ReadableWorkbook book =
                new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(true, false))) {
            for (org.dhatim.fastexcel.reader.Sheet sheet : book.getSheets().toList()) {
                List<List<String>> rows = rows(sheet, lengths);
                if (!rows.isEmpty()) {
                    texts.put(sheet.getName().strip().toLowerCase(Locale.ROOT) + ENDING, CsvLines.write(rows));
                }
            }
            return new Unpacked(texts, List.of());
        }
    }

    private static Unpacked refused(String name, String wrong, String instead) {
        return new Unpacked(Map.of(), List.of(new CellError(name, 0, "", wrong, instead)));
    }

    /** Rows or cells that no history has. */
    private static final class TooMany extends RuntimeException {
        private static final long serialVersionUID = 1;

        TooMany(String message) {
            super(message);
        }
    }

    /** A few bytes may unfold to gigabytes: all that its reader would find is unfolded once into nothing, and counted. */
    private static boolean isTooLarge(byte[] bytes) throws IOException {
        try (ZipFile zip = ZipFile.builder()
                .setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes))
                .get()) {
            byte[] some = new byte[16 * 1024];
            long inflated = 0;
            int parts = 0;
            for (ZipArchiveEntry part : Collections.list(zip.getEntries())) {
                parts++;
                CellReach reach = new CellReach();
                try (InputStream in = zip.getInputStream(part)) {
                    for (int n = in.read(some); n >= 0 && inflated <= MOST_INFLATED; n = in.read(some)) {
                        inflated += n;
                        reach.look(some, n);
                    }
                }
                if (parts > MOST_PARTS
                        || inflated > MOST_INFLATED
                        || part.getName().startsWith("xl/worksheets/") && reach.isTooFar()) {
                    return true;
                }
            }
            return false;
        }
    }

    /** Rows that a sheet leaves out are empty lines, so that lines keep their numbers. */
    private static List<List<String>> rows(org.dhatim.fastexcel.reader.Sheet sheet, CellLengths lengths)
            throws IOException {
        List<List<String>> rows = new ArrayList<>();
        try (Stream<org.dhatim.fastexcel.reader.Row> stream = sheet.openStream()) {
            stream.forEach(row -> {
                if (row.getRowNum() > CsvLines.MOST_ROWS || row.getCellCount() > CsvLines.MOST_COLUMNS) {
                    throw new TooMany("row " + row.getRowNum() + " of sheet '" + sheet.getName() + "' lies beyond "
                            + CsvLines.MOST_ROWS + " rows or " + CsvLines.MOST_COLUMNS + " columns");
                }
                while (rows.size() < row.getRowNum() - 1) {
                    rows.add(List.of());
                }
                List<String> cells = new ArrayList<>();
                for (int c = 0; c < row.getCellCount(); c++) {
                    Cell cell = row.getCell(c);
                    String text = cell == null ? "" : text(cell);
                    if (lengths.areTooMuchWith(text)) {
                        throw new TooMany("row " + row.getRowNum() + " of sheet '" + sheet.getName()
                                + "' holds too long texts: " + CellLengths.LIMITS);
                    }
                    cells.add(CellText.guarded(text));
                }
                rows.add(cells);
            });
        }
        return rows;
    }

    private static String text(Cell cell) {
        if (cell.getType() == CellType.NUMBER && PlainDigits.areTooMany(cell.asNumber())) {
            return String.valueOf(cell.getRawValue()); // its column says what a number is
        }
        if (cell.getType() == CellType.NUMBER) {
            String format = cell.getDataFormatString();
            return format != null
                            && !format.equals("General")
                            && DATE_FORMAT.matcher(plain(format)).matches()
                    ? date(cell.asDate())
                    : cell.asNumber().stripTrailingZeros().toPlainString();
        }
        if (cell.getType() == CellType.FORMULA) { // what it came to when the workbook was saved
            return cell.getRawValue() == null ? "" : cell.getRawValue();
        }
        String text = cell.getText() == null ? "" : cell.getText();
        Matcher escapes = ESCAPE.matcher(text);
        return escapes.replaceAll(
                m -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(m.group(1), 16))));
    }

    /** Without colours, conditions and quoted words. */
    private static String plain(String format) {
        return format.replaceAll("\\[[^\\]]*\\]|\"[^\"]*\"", "");
    }

    /** A day, or a day with its time, as files have them. */
    private static String date(LocalDateTime at) {
        return at.toLocalTime().toSecondOfDay() == 0
                ? at.toLocalDate().toString()
                : at.format(DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT));
    }
}
