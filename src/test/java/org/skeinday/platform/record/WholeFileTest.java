package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    @TempDir
    Path root;

    @Test
    void what_is_written_replaces_what_was_there_and_nothing_is_left_beside() throws Exception {
        Path file = root.resolve("word");
        WholeFile.write(file, "first");
        WholeFile.write(file, "second");
        assertEquals("second", Files.readString(file));
        try (Stream<Path> all = Files.list(root)) {
            assertEquals(List.of(file), all.toList());
        }
    }

    @Test
    void while_it_cannot_be_written_the_old_one_stays() throws Exception {
        Path file = root.resolve("word");
        WholeFile.write(file, "first");
        Path inTheWay = Files.createDirectory(root.resolve("word" + WholeFile.ASIDE));
        Files.createFile(inTheWay.resolve("kept"));
        assertThrows(IOException.class, () -> WholeFile.write(file, "second"));
        assertEquals("first", Files.readString(file));
    }

    @Test
    void what_a_kill_has_left_half_written_is_dropped_at_the_start() throws Exception {
        Path data = root.resolve("data");
        ActStore.open(data, NoteKind.projection(), Clock.systemUTC()).close();
        Path half = data.resolve(People.FILE + WholeFile.ASIDE);
        Files.writeString(half, "{\"names\":{\"p1\":\"Ay");
        ActStore.open(data, NoteKind.projection(), Clock.systemUTC()).close();
        assertFalse(Files.exists(half));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void a_folder_and_its_files_are_for_the_owner_alone_and_old_ones_are_tightened() throws Exception {
        Path data = root.resolve("data");
        ActStore.open(data, NoteKind.projection(), Clock.systemUTC()).close();
        Path backup = Backup.make(data, data.resolve(Backup.FOLDER), java.time.Instant.EPOCH)
                .folder();
        assertEquals("rwx------", rights(data));
        assertEquals("rwx------", rights(backup));
        for (Path file : files(data)) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-r--"));
        }
        Files.setPosixFilePermissions(data, PosixFilePermissions.fromString("rwxr-xr-x"));
        Files.setPosixFilePermissions(backup, PosixFilePermissions.fromString("rwxrwxrwx"));
        Path others = Files.createDirectory(data.resolve("pictures"));
        Files.setPosixFilePermissions(others, PosixFilePermissions.fromString("rwxr-xr-x"));
        ActStore.open(data, NoteKind.projection(), Clock.systemUTC()).close();
        OwnerOnly.tightenAll(data); // as the program does once it is ready
        assertEquals("rwx------", rights(data));
        assertEquals("rwx------", rights(backup));
        for (Path file : files(data)) {
            assertEquals("rw-------", rights(file), file.toString());
        }
        assertEquals("rwxr-xr-x", rights(others), "what somebody else keeps there is left alone");
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void a_folder_that_is_closed_for_writing_is_not_opened() throws Exception {
        Path closed = Files.createDirectory(root.resolve("closed"));
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
        OwnerOnly.tightenAll(closed);
        assertEquals("r-x------", rights(closed));
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwx------"));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void a_link_in_the_folder_changes_nothing_where_it_leads() throws Exception {
        Path data = Files.createDirectory(root.resolve("data"));
        Path elsewhere = Files.createFile(root.resolve("elsewhere"));
        Files.setPosixFilePermissions(elsewhere, PosixFilePermissions.fromString("rw-r--r--"));
        Files.createSymbolicLink(data.resolve("link"), elsewhere);
        OwnerOnly.tightenAll(data);
        assertEquals("rw-r--r--", rights(elsewhere));
    }

    private static List<Path> files(Path folder) throws IOException {
        List<Path> files = new ArrayList<>();
        try (Stream<Path> all = Files.walk(folder)) {
            all.filter(Files::isRegularFile).forEach(files::add);
        }
        assertTrue(files.size() > 5, files.toString());
        return files;
    }

    private static String rights(Path path) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    }
}
