package org.skeinday.hall;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.skeinday.units.Length;

/** Reads {@code hall/worked-layouts.csv}. */
final class WorkedLayouts {
    /** @param broken rule:mm joined by |, or none */
    record Row(String layout, Lane lane, Placed placed, double nearestMm, String broken, String text) {}

    private WorkedLayouts() {}

    static List<Row> rows() throws IOException {
        try (InputStream in = WorkedLayouts.class.getResourceAsStream("/hall/worked-layouts.csv")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(WorkedLayouts::row)
                    .toList();
        }
    }

    private static Row row(String line) {
        String[] cells = line.split(",", -1);
        Length a = mm(cells[4]);
        Length b = mm(cells[5]);
        Side side = Side.ofWord(cells[6]);
        Taped at = switch (cells[3]) {
            case "beside" -> Taped.beside(a, b, side);
            case "behind" -> Taped.behindMount(a, b, side);
            case "ends" -> Taped.fromEnds(a, b, side);
            default -> throw new IllegalArgumentException(cells[3]);
        };
        Placed placed = new Placed(cells[2], Placed.Kind.ofWord(cells[2]), at);
        return new Row(
                cells[0], new Lane("lane 1", mm(cells[1])), placed, Double.parseDouble(cells[7]), cells[8], line);
    }

    static Length mm(String cell) {
        return Length.ofMillimetres(Double.parseDouble(cell));
    }
}
