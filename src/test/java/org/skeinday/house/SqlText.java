package org.skeinday.house;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Literals that are SQL. Class files would show them too, but sources name the place. */
final class SqlText {
    private static final Pattern STATEMENT = Pattern.compile(
            "\"\\s*(select\\s+.+\\s+from|insert\\s+into|update\\s+\\w+\\s+set\\s+\\w+\\s*=|delete\\s+from|merge\\s+into|"
                    + "create\\s+(table|index)|alter\\s+table|drop\\s+(table|all))\\s",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern HOMES = Pattern.compile("/(store|platform/db)/");

    private SqlText() {}

    /** @return names of files that hold a statement and are neither a store nor in the database's room */
    static List<String> outsideItsHomes(Path sources) throws IOException {
        try (Stream<Path> files = Files.walk(sources)) {
            return files.filter(file -> file.toString().endsWith(".java"))
                    .filter(file -> !HOMES.matcher(file.toString()).find())
                    .filter(SqlText::hasStatement)
                    .map(file -> file.getFileName().toString())
                    .sorted()
                    .toList();
        }
    }

    private static boolean hasStatement(Path file) {
        try {
            return STATEMENT.matcher(Files.readString(file)).find();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
