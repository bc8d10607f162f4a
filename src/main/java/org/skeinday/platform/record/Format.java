package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The form of a data folder, a number beside the journal that rises with each change that an older program could not go
 * on with. A folder without it has form 1.
 */
final class Format {
    static final String FILE = "record-format";
    static final int NEWEST = 1;

    private Format() {}

    /**
     * Reads, and touches nothing.
     *
     * @throws Damaged when a newer program used the folder, or its number is none
     */
    static void refuseNewer(Path folder) throws IOException {
        if (of(folder) > NEWEST) {
            throw new Damaged("record 1: this folder was used by a newer Skeinday. Use that version, or restore a"
                    + " backup made before.");
        }
    }

    private static int of(Path folder) throws IOException {
        Path file = folder.resolve(FILE);
        if (!Files.exists(file)) {
            return 1;
        }
        String number = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).strip(); // any byte
        if (!number.matches("[1-9][0-9]{0,5}")) {
            throw new Damaged("record 1: " + file + " holds no number. Put it back from a backup.");
        }
        return Integer.parseInt(number);
    }

    /** Leaves word that this program uses the folder. */
    static void keep(Path folder) throws IOException {
        Path file = folder.resolve(FILE);
        if (Files.exists(file) && of(folder) == NEWEST) {
            return;
        }
        WholeFile.write(file, NEWEST + "\n");
    }
}
