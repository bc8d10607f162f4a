package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which backup is the newest: the one that has come furthest, whatever a clock said; and what that means for a start. */
class BackupOrderTest {
    private static final WriterSettings QUICK = new WriterSettings(5_000, 50, 0);
    private static final Instant AT = Instant.parse("2026-05-09T08:15:00Z");

    @TempDir
    Path root;

    private Path data;
    private Path place;

    @BeforeEach
    void name() {
        data = root.resolve("data");
        place = data.resolve(Backup.FOLDER);
    }

    private static void keep(Path folder, int from, int to) throws Exception {
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer =
                        new Writer(record, List.of(NoteKind.ACT), Clock.systemUTC(), QUICK, (topics, n) -> {})) {
            for (int i = from; i <= to; i++) {
                writer.submit(NoteKind.act(i, "note " + i));
            }
        }
    }

    private String refused() {
        return String.valueOf(assertThrows(
                        Damaged.class,
                        () -> ActStore.open(data, NoteKind.projection(), Clock.systemUTC())
                                .close())
                .getMessage());
    }

    private void cutTo(int lines) throws Exception {
        Files.deleteIfExists(data.resolve("skeinday.mv.db"));
        Path journal = data.resolve(Journal.FILE);
        Files.writeString(
                journal, String.join("\n", Files.readAllLines(journal).subList(0, lines)) + (lines == 0 ? "" : "\n"));
    }

    @Test
    void a_clock_that_was_set_back_prunes_the_oldest_all_the_same() throws Exception {
        for (int i = 1; i <= 23; i++) {
            keep(data, i, i);
            Backup.make(data, place, AT.minusSeconds(i)); // each is named as if it were older than the one before
        }
        Backup.prune(data, place);
        List<Path> left = Backup.in(place);
        assertEquals(20, left.size());
        assertEquals(23, BackupList.read(left.get(0)).records(), "the newest");
        assertEquals(4, BackupList.read(left.get(19)).records(), "the oldest that is kept");
        assertEquals(left.get(0), Backup.newest(data, place).orElseThrow());
        assertEquals(
                left.get(0),
                Backup.makeIfChanged(data, place, AT.plusSeconds(60)).folder(),
                "nothing has changed");
        cutTo(10);
        Files.delete(data.resolve(FolderMark.FILE));
        assertTrue(refused().contains("knows 23 records, the journal has 10"), refused());
        assertTrue(refused().contains("restore " + left.get(0) + " "), refused());
    }

    @Test
    void backups_of_another_folder_in_the_same_place_are_left_to_it() throws Exception {
        Path stick = root.resolve("stick");
        Path other = root.resolve("other");
        keep(other, 1, 1);
        Path others = Backup.make(other, stick, AT.minusSeconds(99)).folder();
        for (int i = 1; i <= 21; i++) {
            keep(data, i, i);
            Backup.make(data, stick, AT.plusSeconds(i));
        }
        Backup.prune(data, stick);
        assertTrue(Files.isDirectory(others));
        assertEquals(21, Backup.in(stick).size());
    }

    @Test
    void an_older_folder_without_a_mark_is_refused_when_it_is_shorter_than_its_newest_backup() throws Exception {
        keep(data, 1, 5);
        Path five = Backup.make(data, place, AT).folder();
        Files.delete(data.resolve(FolderMark.FILE));
        cutTo(3);
        assertTrue(refused().startsWith("record 4: the journal was cut: the backup " + five + " knows 5"), refused());
        assertThrows(Damaged.class, () -> Backup.make(data, place, AT.plusSeconds(5)));
        cutTo(0);
        assertTrue(refused().startsWith("record 1: "), refused());
        Restoring.restore(five, data, AT.plusSeconds(9));
        keep(data, 6, 6);
    }

    /** An older program's restore has set the longer record aside; what was backed up before that is of a line that was left. */
    @Test
    void an_older_folder_that_was_put_back_to_less_is_taken_as_it_is() throws Exception {
        keep(data, 1, 3);
        byte[] three = Files.readAllBytes(data.resolve(Journal.FILE));
        keep(data, 4, 5);
        Backup.make(data, place, AT);
        Files.createDirectories(data.resolve(Backup.SET_ASIDE + Backup.NAME.format(AT.plusSeconds(9))));
        Files.delete(data.resolve(FolderMark.FILE));
        Files.delete(data.resolve("skeinday.mv.db"));
        Files.write(data.resolve(Journal.FILE), three);
        keep(data, 6, 6);
        assertEquals(4, Files.readAllLines(data.resolve(Journal.FILE)).size());
    }
}
