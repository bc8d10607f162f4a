package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.junit.jupiter.api.Test;

/** Workbooks that are made to fill the memory. */
class XlsxLimitsTest {
    private static String refused(byte[] bytes) {
        Unpacked read = XlsxBook.read("season.xlsx", bytes);
        assertEquals(Map.of(), read.texts());
        assertEquals(1, read.errors().size());
        return read.errors().get(0).text();
    }

    private static byte[] zipped(int parts, int megabytes) throws Exception {
        var bytes = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(bytes)) {
            for (int i = 0; i < parts; i++) {
                zip.putNextEntry(new ZipEntry("part" + i));
                for (int k = 0; k < megabytes; k++) {
                    zip.write(new byte[1024 * 1024]);
                }
                zip.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    @Test
    void a_small_file_that_unfolds_to_much_is_not_unfolded() throws Exception {
        byte[] bomb = zipped(1, 80);
        assertTrue(bomb.length < 100_000, "it is small: " + bomb.length);
        assertTrue(refused(bomb).contains("too large"), refused(bomb));
        assertTrue(refused(zipped(600, 0)).contains("too large"));
    }

    @Test
    void cells_far_to_the_right_are_refused_with_their_row() {
        String wide = ",".repeat(250) + "x\n";
        String said = refused(XlsxBook.write(Map.of("flights.csv", wide)));
        assertTrue(said.contains("row 1 of sheet 'flights' lies beyond"), said);
    }

    @Test
    void a_cell_beyond_the_last_column_of_any_workbook_is_refused_before_room_is_made_for_it() throws Exception {
        assertTrue(refused(withFirstCellAt("ZZZZZZ1")).contains("too large"));
        assertEquals(List.of(), XlsxBook.read("a.xlsx", withFirstCellAt("C1")).errors());
    }

    @Test
    void a_cell_of_a_kind_that_its_reader_does_not_know_is_said_in_words() throws Exception {
        String said = refused(altered(" t=\"s\"", " t=\"zz\""));
        assertTrue(said.contains("no workbook that can be read"), said);
    }

    /** A text is kept once in a workbook, however many cells name it. */
    @Test
    void one_long_text_that_many_cells_name_is_refused_before_it_is_copied_for_each() throws Exception {
        String row = ("," + "x".repeat(9_000)).repeat(100).substring(1) + "\n";
        byte[] small = XlsxBook.write(Map.of("flights.csv", row.repeat(80)));
        assertTrue(small.length < 200_000, "it is small: " + small.length);
        String said = refused(small);
        assertTrue(said.contains("row 72 of sheet 'flights' holds too long texts: at most 10000"), said);
        assertTrue(said.contains("64 million in all"), said);
        assertEquals(
                List.of(),
                XlsxBook.read("a.xlsx", XlsxBook.write(Map.of("a.csv", row))).errors());
        String one = refused(XlsxBook.write(Map.of("flights.csv", "event\n" + "x".repeat(10_001) + "\n")));
        assertTrue(one.contains("row 2 of sheet 'flights' holds too long texts"), one);
    }

    private static byte[] withFirstCellAt(String place) throws Exception {
        return altered(" r=\"A1\"", " r=\"" + place + "\"");
    }

    /** A small workbook with something else in its sheet. */
    private static byte[] altered(String from, String to) throws Exception {
        byte[] plain = XlsxBook.write(Map.of("flights.csv", "event,model\nabc,def\n"));
        var bytes = new ByteArrayOutputStream();
        try (ZipFile in = ZipFile.builder()
                        .setSeekableByteChannel(new SeekableInMemoryByteChannel(plain))
                        .get();
                var out = new ZipOutputStream(bytes)) {
            for (ZipArchiveEntry e : Collections.list(in.getEntries())) {
                String text = new String(in.getInputStream(e).readAllBytes(), StandardCharsets.UTF_8);
                out.putNextEntry(new ZipEntry(e.getName()));
                boolean sheet = e.getName().startsWith("xl/worksheets/");
                assertTrue(!sheet || text.contains(from), text);
                out.write((sheet ? text.replaceFirst(from, to) : text).getBytes(StandardCharsets.UTF_8));
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    @Test
    void entities_of_its_text_are_not_expanded() throws Exception {
        byte[] plain = XlsxBook.write(Map.of("flights.csv", "event,model\nabc,def\n"));
        assertEquals(List.of(), XlsxBook.read("a.xlsx", plain).errors());
        var bytes = new ByteArrayOutputStream();
        try (ZipFile in = ZipFile.builder()
                        .setSeekableByteChannel(new SeekableInMemoryByteChannel(plain))
                        .get();
                var out = new ZipOutputStream(bytes)) {
            for (ZipArchiveEntry e : Collections.list(in.getEntries())) {
                String text = new String(in.getInputStream(e).readAllBytes(), StandardCharsets.UTF_8);
                if (e.getName().endsWith("sheet1.xml") || e.getName().endsWith("sharedStrings.xml")) {
                    text = text.replaceFirst("(<\\?xml[^>]*\\?>)?", "$1<!DOCTYPE x [<!ENTITY long \"unfolded\">]>")
                            .replace("abc", "&long;");
                }
                out.putNextEntry(new ZipEntry(e.getName()));
                out.write(text.getBytes(StandardCharsets.UTF_8));
                out.closeEntry();
            }
        }
        Unpacked read = XlsxBook.read("a.xlsx", bytes.toByteArray());
        assertTrue(
                read.texts().values().stream().noneMatch(t -> t.contains("unfolded")),
                read.texts().toString());
    }
}
