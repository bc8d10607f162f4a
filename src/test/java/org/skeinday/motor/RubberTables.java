package org.skeinday.motor;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Reads the published tables under {@code published/motor}; lines from # on name the source. */
final class RubberTables {
    private RubberTables() {}

    /** Rows without source lines and heading. */
    static List<String[]> rows(String file) throws IOException {
        try (InputStream in = RubberTables.class.getResourceAsStream("/published/motor/" + file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        }
    }

    static double[] column(String file, int column) throws IOException {
        return rows(file).stream()
                .mapToDouble(row -> Double.parseDouble(row[column]))
                .toArray();
    }
}
