package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What is closed to others is the program's own, and nothing else. */
@DisabledOnOs(OS.WINDOWS)
class OwnerOnlyTest {
    @TempDir
    Path root;

    private static void open(Path folder) throws IOException {
        ActStore.open(folder, NoteKind.projection(), Clock.systemUTC()).close();
        OwnerOnly.tightenAll(folder); // as once more when the program serves
    }

    private static Path withRights(Path path, String rights) throws IOException {
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(rights));
        return path;
    }

    private static String rights(Path path) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    }

    @Test
    void in_a_folder_with_things_of_others_none_of_them_is_closed_at_any_start() throws Exception {
        Path home = Files.createDirectory(root.resolve("home"));
        Path letter = withRights(Files.writeString(home.resolve("letter.txt"), "Dear all"), "rw-r--r--");
        Path pictures = withRights(Files.createDirectory(home.resolve("pictures")), "rwxr-xr-x");
        Path backups = withRights(Files.createDirectory(home.resolve("backups")), "rwxr-xr-x");
        Path theirs = withRights(Files.writeString(backups.resolve("tax.txt"), "1"), "rw-r--r--");
        withRights(home, "rwxr-xr-x");
        for (int start = 0; start < 3; start++) {
            open(home);
            assertEquals("rwxr-xr-x", rights(home));
            assertEquals("rw-r--r--", rights(letter));
            assertEquals("rwxr-xr-x", rights(pictures));
            assertEquals("rwxr-xr-x", rights(backups));
            assertEquals("rw-r--r--", rights(theirs));
            for (String own : new String[] {Journal.FILE, People.FILE, "skeinday.mv.db", FolderMark.FILE, "lock"}) {
                assertEquals("rw-------", rights(home.resolve(own)), own);
            }
        }
        assertTrue(OwnerOnly.isAmongOthers(home));
    }

    @Test
    void a_folder_of_its_own_is_closed_though_somebody_else_made_it_or_opened_it() throws Exception {
        Path empty = withRights(Files.createDirectory(root.resolve("empty")), "rwxr-xr-x");
        open(empty);
        assertEquals("rwx------", rights(empty));
        withRights(empty, "rwxr-xr-x");
        withRights(empty.resolve(Journal.FILE), "rw-r--r--");
        Files.writeString(empty.resolve("note.txt"), "put here later");
        open(empty);
        assertEquals("rwx------", rights(empty));
        assertEquals("rw-------", rights(empty.resolve(Journal.FILE)));
    }
}
