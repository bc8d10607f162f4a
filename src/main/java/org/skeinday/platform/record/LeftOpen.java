package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.skeinday.platform.db.Database;

/**
 * A database that was not closed in good order, out of the way while another is made in its place. It is not used again,
 * but what it knew of the journal is needed until the other is there, also by a start after a kill in between.
 */
final class LeftOpen {
    private static final String NAME = ActStore.DATABASE + "-left-open";

    private LeftOpen() {}

    static Path file(Path folder) {
        return Database.file(folder, NAME);
    }

    /** Undoes {@link #moveAside} where it was done and never ended; what was made in its place is half made. */
    static void putBack(Path folder) throws IOException {
        if (Files.exists(file(folder))) {
            Files.move(file(folder), Database.file(folder, ActStore.DATABASE), StandardCopyOption.REPLACE_EXISTING);
        }
    }

    static void moveAside(Path folder) throws IOException {
        Files.move(Database.file(folder, ActStore.DATABASE), file(folder), StandardCopyOption.REPLACE_EXISTING);
    }

    static void remove(Path folder) throws IOException {
        Files.deleteIfExists(file(folder));
    }
}
