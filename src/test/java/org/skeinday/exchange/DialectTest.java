package org.skeinday.exchange;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.motor.MotorAdded;

class DialectTest {
    private static final String NOTE = "first; then,\nsecond \"line\" \u2013 M\u00fche";

    /** How a spreadsheet writes the same cells. */
    record Dialect(char separator, char decimal, String encoding, boolean unitInHeader, String lineEnd) {
        String number(String plain) {
            return plain.replace('.', decimal);
        }

        Map<String, byte[]> files() {
            Map<String, byte[]> files = new HashMap<>();
            files.put(
                    "batches.csv",
                    bytes(List.of(
                            List.of("batch", "k", "width" + header("mm")), List.of("A", "43.5", "2.4" + cell("mm")))));
            files.put(
                    "motors.csv",
                    bytes(List.of(
                            List.of("tag", "batch", "team", "loop" + header("in"), "mass" + header("g")),
                            List.of("R-01", "A", "Rohrs\u00e4nger", "18.5" + cell("in"), "1.62" + cell("g")))));
            files.put(
                    "event.csv",
                    bytes(List.of(List.of("name", "day", "winder ratio"), List.of("Abend", "2026-05-02", "9.5"))));
            files.put(
                    "flights.csv",
                    bytes(List.of(
                            List.of("motor", "flown", "launch torque" + header("in-ozf"), "time", "note"),
                            List.of("R-01", "2026-05-02 18:00", "0.34" + cell("in-ozf"), "1:35.23", NOTE))));
            return files;
        }

        private String header(String unit) {
            return unitInHeader ? " (" + unit + ")" : "";
        }

        private String cell(String unit) {
            return unitInHeader ? "" : " " + unit;
        }

        private byte[] bytes(List<List<String>> rows) {
            List<String> lines = new ArrayList<>();
            for (List<String> row : rows) {
                lines.add(String.join(
                        String.valueOf(separator),
                        row.stream().map(this::quoted).toList()));
            }
            String text = String.join(lineEnd, lines) + lineEnd;
            return switch (encoding) {
                case "bom" -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8);
                case "utf-8" -> text.getBytes(StandardCharsets.UTF_8);
                default -> text.getBytes(Charset.forName(encoding));
            };
        }

        private String quoted(String cell) {
            String there = (cell.matches("[0-9:.]+( \\S+)?") && !cell.contains("-0") ? number(cell) : cell)
                    .replace("\n", lineEnd);
            boolean needs = there.indexOf(separator) >= 0 || there.contains("\"") || there.contains("\n");
            return needs ? '"' + there.replace("\"", "\"\"") + '"' : there;
        }
    }

    static Stream<Dialect> dialects() {
        List<Dialect> all = new ArrayList<>();
        for (char separator : new char[] {',', ';', '\t'}) {
            for (char decimal : new char[] {'.', ','}) {
                for (String encoding : List.of("utf-8", "bom", "windows-1252", "UTF-16")) {
                    for (boolean unitInHeader : new boolean[] {true, false}) {
                        all.add(new Dialect(separator, decimal, encoding, unitInHeader, "\n"));
                        all.add(new Dialect(separator, decimal, encoding, unitInHeader, "\r\n"));
                    }
                }
            }
        }
        return all.stream();
    }

    private static DayFiles.Read read(Dialect dialect) {
        Map<String, String> texts = new HashMap<>();
        dialect.files().forEach((name, bytes) -> texts.put(name, FileText.decode(bytes)));
        return Reading.of(texts);
    }

    @ParameterizedTest
    @MethodSource("dialects")
    void every_dialect_of_a_spreadsheet_gives_the_same_facts(Dialect dialect) {
        DayFiles.Read plain = read(new Dialect(',', '.', "utf-8", true, "\n"));
        DayFiles.Read read = read(dialect);
        Reading.right(read);
        assertEquals(plain.facts(), read.facts());
    }

    @Test
    void those_facts_are_what_the_cells_say() {
        DayFiles.Read read = read(new Dialect(';', ',', "windows-1252", true, "\r\n"));
        Reading.right(read);
        var motor = (MotorAdded) body(read, "motor.added");
        assertEquals("Rohrs\u00e4nger", motor.team());
        assertEquals(469.9, motor.loopMm(), 1e-9);
        assertEquals("18.5 in", motor.loopTyped());
        var flight = (PracticeFlown) body(read, "flight.flown");
        assertEquals(95_230, flight.durationMs());
        assertEquals(NOTE, flight.note());
        assertEquals("0.34 in-ozf", flight.launchTorqueTyped());
    }

    private static Object body(DayFiles.Read read, String kind) {
        return read.facts().stream()
                .filter(f -> f.kind().equals(kind))
                .findFirst()
                .orElseThrow()
                .body();
    }

    @Test
    void there_are_as_many_dialects_as_ways_to_combine_them() {
        assertEquals(3 * 2 * 4 * 2 * 2, dialects().distinct().count());
    }

    @Test
    void a_header_may_name_its_unit_with_or_without_brackets() {
        for (String mass : List.of("mass (g)", "mass [g]", "mass g", "Mass_G", "MASS  (G)")) {
            DayFiles.Read read =
                    Reading.with("motors.csv", "tag,batch,team,loop in," + mass + "\nR-01,A,Reed,18.5,1.6\n");
            Reading.right(read);
            assertEquals(1.6, ((MotorAdded) body(read, "motor.added")).massG(), 1e-12, mass);
        }
    }

    @Test
    void a_separator_inside_quotes_parts_no_cells() {
        assertEquals(',', Separator.of("\"a;b;c\",d\n1;2;3;4\n"));
        assertEquals(';', Separator.of("\"a,\nb,c\";d\n1,2,3\n"));
        assertEquals('\t', Separator.of("\n\na\tb\n"));
        assertEquals(',', Separator.of("alone\n1;2\n"));
        assertEquals(',', Separator.of(""));
    }

    @Test
    void lines_without_anything_in_them_are_passed_over() {
        DayFiles.Read read = Reading.with("batches.csv", "\n;;\nbatch;k;\n;;\nA;43,5;\n\n;;\n");
        Reading.right(read);
        assertEquals(1, read.rows().get("batches.csv"));
        assertTrue(read.facts().toString().contains("kInchGram=43.5"));
    }

    @Test
    void days_may_be_written_with_points_and_a_first_line_may_name_the_separator() {
        Map<String, String> texts = new HashMap<>(Reading.RIGHT);
        texts.put("event.csv", "name,day\nReed Day,9.5.2026\n");
        Reading.right(Reading.of(texts));
        String hinted = FileText.decode("sep=;\r\nname;day\r\nReed Day;09.05.2026\r\n".getBytes(UTF_8));
        texts.put("event.csv", hinted);
        Reading.right(Reading.of(texts));
        texts.put("event.csv", "name,day\nReed Day,5/9/2026\n");
        Reading.says(Reading.of(texts), 2, "day", "no day of the calendar", "2026-05-09");
    }
}
