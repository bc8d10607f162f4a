package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.TestIds;

/** Workbooks there and back, and opened by another library (Apache POI). */
class XlsxProperties {
    private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

    /** Other seeds: -Dskeinday.seed=7 runs from 7 on. */
    static LongStream seeds() {
        long first = Long.getLong("skeinday.seed", 20_261_126L);
        return LongStream.range(first, first + 12);
    }

    private static Map<String, String> day(long seed) {
        return DayFiles.write(new RandomDay(seed).day(), ZONE).texts();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void any_day_comes_through_a_workbook_as_the_same_texts(long seed) {
        System.out.println("seed " + seed);
        Map<String, String> texts = day(seed);
        Unpacked read = XlsxBook.read("season.xlsx", XlsxBook.write(texts));
        assertEquals(List.of(), read.errors());
        texts.forEach((file, text) ->
                assertEquals(rows(file, text), rows(file, read.texts().get(file)), file));
        DayFiles.Read facts = DayFiles.read(read.texts(), Day.EMPTY, TestIds.from("id-"), ZONE, Duration.ZERO);
        assertEquals(List.of(), facts.errors());
        assertEquals(
                DayFiles.read(texts, Day.EMPTY, TestIds.from("id-"), ZONE, Duration.ZERO)
                        .facts(),
                facts.facts());
    }

    /** Cells as text; those that are empty at a row's end are as good as none. */
    private static List<List<String>> rows(String file, String text) {
        List<CellError> errors = new ArrayList<>();
        List<List<String>> rows = CsvLines.read(file, text, errors).stream()
                .map(line -> {
                    List<String> cells = new ArrayList<>(line.cells());
                    while (!cells.isEmpty() && cells.get(cells.size() - 1).isEmpty()) {
                        cells.remove(cells.size() - 1);
                    }
                    return List.copyOf(cells);
                })
                .toList();
        assertEquals(List.of(), errors);
        return rows;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void another_reader_sees_the_same_cells_each_text_a_text_and_no_formula(long seed) throws IOException {
        Map<String, String> texts = day(seed);
        try (var book = new XSSFWorkbook(new ByteArrayInputStream(XlsxBook.write(texts)))) {
            assertEquals(texts.size(), book.getNumberOfSheets());
            for (Map.Entry<String, String> file : texts.entrySet()) {
                XSSFSheet sheet = book.getSheet(file.getKey().replace(".csv", ""));
                List<List<String>> rows = rows(file.getKey(), file.getValue());
                for (int r = 0; r < rows.size(); r++) {
                    for (int c = 0; c < rows.get(r).size(); c++) {
                        assertSeen(CellText.unguarded(rows.get(r).get(c)), cell(sheet, r, c), file.getKey());
                    }
                }
            }
        }
    }

    private static XSSFCell cell(XSSFSheet sheet, int r, int c) {
        XSSFRow row = sheet.getRow(r);
        return row == null ? null : row.getCell(c);
    }

    private static void assertSeen(String text, XSSFCell cell, String where) {
        if (text.isEmpty()) {
            assertTrue(cell == null || cell.toString().isEmpty(), where);
            return;
        }
        String at = where + " " + cell.getReference() + " '" + text + "'";
        if (cell.getCellType() == CellType.NUMERIC) {
            assertEquals(Double.parseDouble(text), cell.getNumericCellValue(), at);
        } else {
            assertEquals(CellType.STRING, cell.getCellType(), at);
            assertEquals(text, cell.getStringCellValue(), at);
            assertEquals("@", cell.getCellStyle().getDataFormatString(), at);
        }
    }

    private static Map<String, String> one(String cell) {
        return Map.of("notes.csv", CsvLines.write(List.of(List.of("note"), List.of(CellText.guarded(cell)))));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+1",
                "-x",
                "@x",
                "\tx",
                "'=1",
                "=HYPERLINK(\"x\")",
                "_x0041_",
                "__x005F_x0041_",
                "a\nb",
                "<&>\"",
                " led",
                "007",
                "1e5",
                "1.50",
                "-0",
                "0x1F",
                "1234567890123456",
                "TRUE",
                "2026-11-28"
            })
    void what_looks_like_something_else_stays_the_text_it_is(String text) throws IOException {
        byte[] bytes = XlsxBook.write(one(text));
        assertEquals(one(text), XlsxBook.read("b.xlsx", bytes).texts());
        try (var book = new XSSFWorkbook(new ByteArrayInputStream(bytes))) {
            XSSFCell cell = cell(book.getSheetAt(0), 1, 0);
            assertEquals(CellType.STRING, cell.getCellType());
            assertEquals(CellText.unguarded(CellText.guarded(text)), cell.getStringCellValue());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "7", "-1", "470", "1.7", "0.85", "-3.25", "123456789012345", "0.000001"})
    void a_number_is_a_number_that_can_be_reckoned_with(String text) throws IOException {
        byte[] bytes = XlsxBook.write(one(text));
        assertEquals(one(text), XlsxBook.read("b.xlsx", bytes).texts());
        try (var book = new XSSFWorkbook(new ByteArrayInputStream(bytes))) {
            XSSFCell cell = cell(book.getSheetAt(0), 1, 0);
            assertEquals(CellType.NUMERIC, cell.getCellType());
            assertEquals(Double.parseDouble(text), cell.getNumericCellValue());
        }
    }

    @Test
    void a_workbook_of_another_program_is_read_with_its_dates_formulas_and_gaps() throws IOException {
        var bytes = new ByteArrayOutputStream();
        try (var book = new XSSFWorkbook()) {
            XSSFSheet sheet = book.createSheet("Notes");
            XSSFRow head = sheet.createRow(0);
            head.createCell(0).setCellValue("day");
            head.createCell(2).setCellValue("mass (g)");
            XSSFRow row = sheet.createRow(3);
            var day = book.createCellStyle();
            day.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
            row.createCell(0).setCellValue(LocalDate.of(2026, 11, 28));
            row.getCell(0).setCellStyle(day);
            row.createCell(2).setCellFormula("0.5+1.25");
            book.getCreationHelper().createFormulaEvaluator().evaluateAll();
            book.createSheet("Sheet2");
            book.write(bytes);
        }
        Unpacked read = XlsxBook.read("b.xlsx", bytes.toByteArray());
        assertEquals(Map.of("notes.csv", "day,,mass (g)\n\n\n2026-11-28,,1.75\n"), read.texts());
    }

    @Test
    void what_is_no_workbook_is_an_error_and_no_exception() {
        for (byte[] bytes : List.of(new byte[0], "a,b\n1,2\n".getBytes(StandardCharsets.UTF_8))) {
            Unpacked read = XlsxBook.read("b.xlsx", bytes);
            assertTrue(read.texts().isEmpty());
            assertEquals(
                    "b.xlsx: this is no workbook that can be read; save it as .xlsx and try again",
                    read.errors().get(0).text());
        }
        assertFalse(XlsxBook.isNumber("1,5"));
    }
}
