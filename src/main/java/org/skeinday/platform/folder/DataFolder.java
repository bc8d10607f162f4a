package org.skeinday.platform.folder;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.platform.record.OwnerOnly;

/** Where data is kept when nobody says otherwise. */
public final class DataFolder {
    private DataFolder() {}

    /** The usual place of this system for a program's own data. */
    public static Path usual(String name) {
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

    /** Whether this folder was ever used: damage in one that was is for the record itself to say. */
    public static boolean holdsRecord(Path folder) {
        return Stream.of("journal.jsonl", "skeinday-folder.txt", "skeinday.mv.db")
                .anyMatch(name -> Files.exists(folder.resolve(name)));
    }

    /**
     * Why this cannot become a data folder, and what would be right; empty when it is one or can be made.
     *
     * @param folder absolute
     */
    public static Optional<String> whyNot(Path folder) {
        Path there = folder;
        while (!Files.exists(there) && there.getParent() != null) {
            there = there.getParent();
        }
        if (!Files.exists(there)) {
            return Optional.of(there + " is not there: plug it in, or name another folder with --data.");
        }
        if (!Files.isDirectory(there)) {
            return Optional.of(there + " is a file, not a folder: name a folder with --data.");
        }
        return there.equals(folder) || Files.isWritable(there)
                ? Optional.empty()
                : Optional.of("The data folder " + folder + " cannot be made: nothing may be written in " + there
                        + ". Choose another with --data, or ask for the right to write there.");
    }

    /** Makes it where it is not there yet. @throws IOException in plain words when the system does not let it */
    public static void make(Path folder) throws IOException {
        try {
            OwnerOnly.makeFolder(folder);
        } catch (FileSystemException e) { // its own message is no more than the path
            throw new IOException(
                    "The data folder " + folder + " cannot be made: the system lets nothing be written at "
                            + e.getFile() + ". Choose another with --data, or ask for the right to write there.",
                    e);
        }
    }

    private static Path orElse(String variable, Path otherwise) {
        String value = System.getenv(variable);
        return value == null || value.isBlank() ? otherwise : Path.of(value);
    }
}
