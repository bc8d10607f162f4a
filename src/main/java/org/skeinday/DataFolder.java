package org.skeinday;

import java.nio.file.Path;
import java.util.Locale;

/** Where data is kept when nobody says otherwise. */
final class DataFolder {
    private DataFolder() {}

    /** The usual place of this system for a program's own data. */
    static Path usual(String name) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        Path home = Path.of(System.getProperty("user.home", "."));
        if (system.startsWith("windows")) {
            return orElse("LOCALAPPDATA", home.resolve("AppData/Local")).resolve(name);
        }
        if (system.startsWith("mac")) {
            return home.resolve("Library/Application Support").resolve(name);
        }
        return orElse("XDG_DATA_HOME", home.resolve(".local/share")).resolve(name);
    }

    private static Path orElse(String variable, Path otherwise) {
        String value = System.getenv(variable);
        return value == null || value.isBlank() ? otherwise : Path.of(value);
    }
}
