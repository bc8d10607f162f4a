package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.skeinday.TestIds;

/** Files that are larger than any season, and files that are none. */
class BigFilesTest {
    private static DayFiles.Read read(String name, String text) {
        return DayFiles.read(Map.of(name, text), Day.EMPTY, TestIds.from("id-"), ZoneOffset.UTC, Duration.ZERO);
    }

    @Test
    void more_rows_than_a_season_has_are_refused_before_they_fill_the_memory() {
        String rows = "tag,batch\n" + "x,\n".repeat(100_001);
        List<CellError> errors = read("motors.csv", rows).errors();
        assertEquals(1, errors.size(), errors.toString());
        assertEquals(
                "motors.csv line 100002: this lies beyond 100000 rows or 200 columns; keep only the rows and columns that"
                        + " are filled, or bring the file in parts",
                errors.get(0).text());
    }

    @Test
    void more_columns_than_any_file_has_are_refused() {
        List<CellError> errors =
                read("motors.csv", "tag" + ",x".repeat(300) + "\n").errors();
        assertTrue(errors.get(0).text().contains("200 columns"), errors.toString());
    }

    @Test
    void a_file_of_bytes_is_no_csv() {
        byte[] random = new byte[20_000];
        new Random(7).nextBytes(random);
        for (byte[] bytes : List.of(random, "PK\u0003\u0004 and more".getBytes(StandardCharsets.UTF_8), png())) {
            List<CellError> errors = read("motors.csv", FileText.decode(bytes)).errors();
            assertEquals(1, errors.size(), errors.toString());
            assertTrue(errors.get(0).text().startsWith("motors.csv: this is no CSV; save"), errors.toString());
        }
        assertFalse(NotText.is("tag;batch\r\nM1;Größe\r\n"));
    }

    private static byte[] png() {
        return new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13};
    }

    @Test
    void a_cell_of_a_thousand_million_digits_is_said_to_be_no_number_and_is_never_written_out() throws Exception {
        var bytes = new ByteArrayOutputStream();
        try (Workbook book = new Workbook(bytes, "test", "1.0")) {
            Worksheet sheet = book.newWorksheet("motors");
            sheet.value(0, 0, "breaking turns");
            sheet.value(1, 0, new BigDecimal("1E999999999"));
        }
        Unpacked read = assertTimeout(Duration.ofSeconds(20), () -> XlsxBook.read("a.xlsx", bytes.toByteArray()));
        assertEquals(
                "breaking turns\n1E999999999\n", read.texts().get("motors.csv").replace("+", ""));
        Unpacked bundle = Bundle.read(
                "a.json",
                "{\"format\":\"skeinday-bundle\",\"version\":1,\"tables\":{\"motors\":[{\"uses\":1E999999999}]}}");
        assertTrue(
                bundle.texts().values().stream().allMatch(text -> text.length() < 100),
                bundle.errors().toString());
    }

    @Test
    void of_thousands_of_errors_the_first_twenty_are_told_and_how_many_more_there_are() {
        StringBuilder rows = new StringBuilder("tag,batch,team,direction,loop (in),mass (g)\n");
        for (int i = 0; i < 5_000; i++) {
            rows.append("M").append(i).append(",nobody").append(i).append(",Reed,cw,18,1.6\n");
        }
        List<CellError> errors = assertTimeout(Duration.ofSeconds(30), () -> read("motors.csv", rows.toString()))
                .errors();
        List<String> told = CellError.told(errors);
        assertEquals(21, told.size());
        assertEquals("and " + (errors.size() - 20) + " more", told.get(20));
        assertEquals(List.of(), CellError.told(new ArrayList<>()));
    }
}
