package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.platform.db.Database;

/** An older record is backed up and built anew; a newer one is refused in plain words. */
class UpgradeTest {
    @TempDir
    Path root;

    private Path folder;
    private Path journal;

    @BeforeEach
    void keepThreeNotes() throws Exception {
        folder = root.resolve("data");
        journal = folder.resolve(Journal.FILE);
        try (ActStore record = open();
                Writer writer = new Writer(
                        record,
                        List.of(NoteKind.ACT),
                        Clock.systemUTC(),
                        new WriterSettings(5_000, 50, 0),
                        (topics, n) -> {})) {
            for (int i = 1; i <= 3; i++) {
                writer.submit(NoteKind.act(i, "note " + i));
            }
        }
    }

    private ActStore open() throws IOException {
        return ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
    }

    private void inDatabase(String sql) {
        try (Database database = Database.open(folder, ActStore.DATABASE)) {
            database.writing().tx().sql().execute(sql);
            database.writing().commit();
        }
    }

    private List<Path> backups() throws IOException {
        return Backup.in(folder.resolve(Backup.FOLDER));
    }

    /** As a program did whose tables were made of another text. */
    private void makeOlder() {
        inDatabase("update schema_made set hash = 'of an earlier text'");
    }

    @Test
    void a_record_of_an_older_program_is_backed_up_first_and_then_built_anew() throws Exception {
        makeOlder();
        try (ActStore record = open()) {
            assertEquals(3, NoteKind.texts(record).size());
            assertTrue(record.database().isFresh());
        }
        assertEquals(3, BackupCheck.check(backups().get(0)).records());
        open().close();
        assertEquals(1, backups().size(), "once");
    }

    @Test
    void a_database_that_does_not_say_what_made_it_is_of_an_older_program_too() throws Exception {
        inDatabase("drop table schema_made");
        try (ActStore record = open()) {
            assertEquals(3, NoteKind.texts(record).size());
            assertTrue(record.database().isFresh());
        }
        assertEquals(1, backups().size());
    }

    @Test
    void without_its_backup_an_older_record_is_not_touched() throws Exception {
        makeOlder();
        Files.writeString(folder.resolve(Backup.FOLDER), "a file in its place");
        byte[] before = Files.readAllBytes(Database.file(folder, ActStore.DATABASE));
        assertThrows(IOException.class, this::open);
        assertTrue(Files.exists(Database.file(folder, ActStore.DATABASE)), "not set aside");
        assertTrue(before.length > 0);
    }

    private void assertRefusedAsNewer(String record) {
        Damaged refused = assertThrows(Damaged.class, this::open);
        assertTrue(refused.getMessage().startsWith(record), refused.getMessage());
        assertTrue(
                refused.getMessage().contains("newer Skeinday")
                        && refused.getMessage().contains("Use that version, or restore a backup made before."),
                refused.getMessage());
    }

    @Test
    void a_folder_whose_database_a_newer_program_made_is_refused_and_left_as_it_is() throws Exception {
        makeOlder(); // of other tables as well, which alone would have it built anew
        Files.writeString(folder.resolve(Format.FILE), Format.NEWEST + 1 + "\n");
        Map<String, String> before = files();
        assertRefusedAsNewer("record 1: this folder was used by a newer Skeinday");
        assertThrows(Damaged.class, () -> new Verify(NoteKind.projection()).check(folder));
        assertThrows(Damaged.class, () -> new Verify(NoteKind.projection()).rebuild(folder, Clock.systemUTC()));
        assertEquals(before, files());
        assertEquals(List.of(), backups());
    }

    /** Every file with the hash of its bytes. */
    private Map<String, String> files() throws IOException {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                byte[] bytes = Files.readAllBytes(file);
                files.put(folder.relativize(file).toString(), Sha.hex(bytes, bytes.length));
            }
        }
        return files;
    }

    @Test
    void a_backup_of_a_newer_program_is_refused_and_the_folder_left_as_it_is() throws Exception {
        Backup.Made made =
                Backup.make(folder, root.resolve("stick"), Clock.systemUTC().instant());
        Files.writeString(made.folder().resolve(Format.FILE), Format.NEWEST + 1 + "\n");
        Map<String, String> before = files();
        Damaged refused = assertThrows(
                Damaged.class,
                () -> Restoring.restore(made.folder(), folder, Clock.systemUTC().instant()));
        assertTrue(refused.getMessage().contains("newer Skeinday"), refused.getMessage());
        assertEquals(before, files());
    }

    @Test
    void a_form_that_is_no_number_is_damage() throws Exception {
        Files.writeString(folder.resolve(Format.FILE), "two");
        Damaged damaged = assertThrows(Damaged.class, this::open);
        assertTrue(damaged.getMessage().contains("holds no number"), damaged.getMessage());
    }

    @Test
    void a_line_of_a_newer_form_is_refused_by_its_number() throws Exception {
        List<String> lines = Files.readAllLines(journal);
        lines.set(1, rehashed(lines.get(1).replace("\"v\":1,\"at\"", "\"v\":2,\"at\"")));
        Files.write(journal, lines);
        assertRefusedAsNewer("record 2: it was written by a newer Skeinday");
    }

    @Test
    void a_fact_of_a_newer_form_or_an_unknown_kind_is_refused_by_its_number() throws Exception {
        List<String> lines = Files.readAllLines(journal);
        String last = lines.get(2);
        for (String newer : List.of(
                last.replace("\"kind\":\"note.kept\",\"v\":1", "\"kind\":\"note.kept\",\"v\":2"),
                last.replace("\"kind\":\"note.kept\"", "\"kind\":\"note.sung\""))) {
            lines.set(2, rehashed(newer));
            Files.write(journal, lines);
            Files.deleteIfExists(Database.file(folder, ActStore.DATABASE));
            assertRefusedAsNewer("record 3: it was written by a newer Skeinday");
        }
    }

    /** As the program that wrote it would have: its hash fits. */
    private static String rehashed(String line) {
        String body = line.substring(0, line.lastIndexOf(",\"hash\":\""));
        return body + ",\"hash\":\"" + Sha.hex(body) + "\"}";
    }

    @Test
    void people_that_cannot_be_read_are_damage_and_not_a_full_disk() throws Exception {
        Files.writeString(folder.resolve(People.FILE), "{\"pin\":");
        Damaged damaged = assertThrows(Damaged.class, this::open);
        assertTrue(damaged.getMessage().contains("Put it back from a backup"), damaged.getMessage());
    }
}
