package org.skeinday.review;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Reads the published tables; lines from # on name the source. */
final class ReviewTables {
    private ReviewTables() {}

    /** @param file with its folder, for example {@code review/holm.csv}; without source lines and heading */
    static List<String[]> rows(String file) throws IOException {
        try (InputStream in = ReviewTables.class.getResourceAsStream("/published/" + file)) {
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

    /** The numbers of one cell, parted by spaces. */
    static double[] numbers(String cell) {
        return Arrays.stream(cell.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }
}
