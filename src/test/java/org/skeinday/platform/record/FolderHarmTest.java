package org.skeinday.platform.record;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A careless hand on the data folder: what was there is never taken for less in silence. */
class FolderHarmTest {
    private static final WriterSettings QUICK = new WriterSettings(5_000, 50, 0);
    private static final Instant AT = Instant.parse("2026-05-09T08:15:00Z");

    @TempDir
    Path root;

    private Path data;
    private Path backups;

    @BeforeEach
    void name() {
        data = root.resolve("data");
        backups = data.resolve(Backup.FOLDER);
    }

    private void keep(Path folder, int from, int to) throws Exception {
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer =
                        new Writer(record, List.of(NoteKind.ACT), Clock.systemUTC(), QUICK, (topics, n) -> {})) {
            for (int i = from; i <= to; i++) {
                writer.submit(NoteKind.act(i, "crew Crew " + i));
            }
        }
    }

    private void open() throws IOException {
        ActStore.open(data, NoteKind.projection(), Clock.systemUTC()).close();
    }

    private String refused() {
        return String.valueOf(assertThrows(Damaged.class, this::open).getMessage());
    }

    private List<String> names() throws IOException {
        try (ActStore record = ActStore.open(data, NoteKind.projection(), Clock.systemUTC())) {
            return record.people().names().values().stream().sorted().toList();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "[]", "{}", "null", "{\"pin\":\"\",\"names\":[]}", "{\"names\":{\"a\":1},\"pin\":\"\"}"})
    void people_that_cannot_be_read_stop_the_start_and_make_no_backup(String broken) throws Exception {
        keep(data, 1, 2);
        Path good = Backup.make(data, backups, AT).folder();
        Files.writeString(data.resolve(People.FILE), broken);
        assertTrue(refused().contains("The newest backup that has them is " + good), refused());
        assertThrows(Damaged.class, () -> Backup.make(data, backups, AT.plusSeconds(5)));
        assertEquals(List.of(good), Backup.in(backups));
        Files.copy(good.resolve(People.FILE), data.resolve(People.FILE), StandardCopyOption.REPLACE_EXISTING);
        assertEquals(List.of("Crew 1", "Crew 2"), names(), "as it was told");
    }

    @Test
    void missing_people_stop_the_start_naming_the_newest_backup_that_has_them() throws Exception {
        keep(data, 1, 2);
        Path all = Backup.make(data, backups, AT).folder();
        Files.delete(data.resolve(People.FILE));
        assertTrue(refused().contains("lacks the names of 2"), refused());
        assertTrue(refused().contains(all.toString()), refused());
        assertThrows(Damaged.class, () -> Backup.make(data, backups, AT.plusSeconds(5)));
        String verified = assertThrows(Damaged.class, () -> new Verify(NoteKind.projection()).check(data))
                .getMessage();
        assertTrue(String.valueOf(verified).contains("lacks the names of 2"), verified);
        assertFalse(Files.exists(data.resolve(People.FILE)), "nothing is made up");
    }

    @Test
    void people_of_another_day_and_a_name_that_was_altered_are_refused() throws Exception {
        keep(data, 1, 2);
        keep(root.resolve("other"), 1, 2); // the same people by their ids
        byte[] own = Files.readAllBytes(data.resolve(People.FILE));
        Files.write(data.resolve(People.FILE), Files.readAllBytes(root.resolve("other/people.json")));
        assertTrue(refused().contains("holds the people of another day"), refused());
        Files.writeString(data.resolve(People.FILE), new String(own, UTF_8).replace("Crew 2", "Crew 7"));
        assertTrue(refused().contains("does not fit its checksum"), refused());
        Files.write(data.resolve(People.FILE), own);
        open();
    }

    @Test
    void people_of_an_older_program_are_taken_once() throws Exception {
        keep(data, 1, 1);
        String name = Files.readString(data.resolve(People.FILE)).replaceFirst("(?s).*\"names\" : ", "");
        String older = "{\"pin\":\"\",\"names\":" + name.replaceFirst("(?s)\\}.*", "}}");
        Files.writeString(data.resolve(People.FILE), older);
        assertTrue(refused().contains("does not say whose people"), refused());
        Files.writeString(data.resolve(FolderMark.FILE), "Skeinday's data.\n"); // as the older program has left it
        assertEquals(List.of("Crew 1"), names());
        assertTrue(Files.readString(data.resolve(People.FILE)).contains("\"sum\""));
    }

    @Test
    void a_name_that_a_kill_has_left_without_its_person_is_dropped() throws Exception {
        keep(data, 1, 1);
        try (ActStore record = ActStore.open(data, NoteKind.projection(), Clock.systemUTC())) {
            record.people().add(java.util.Map.of("nobody", "Left"));
        }
        assertEquals(List.of("Crew 1"), names());
        assertFalse(Files.readString(data.resolve(People.FILE)).contains("Left"));
    }

    @Test
    void a_journal_that_was_emptied_or_cut_is_no_fresh_day_though_the_database_is_gone() throws Exception {
        keep(data, 1, 5);
        Files.delete(data.resolve("skeinday.mv.db"));
        List<String> lines = Files.readAllLines(data.resolve(Journal.FILE));
        Files.writeString(data.resolve(Journal.FILE), "");
        assertTrue(refused().startsWith("record 1: the journal was cut"), refused());
        assertTrue(refused().contains("restore "), refused());
        assertThrows(Damaged.class, () -> new Verify(NoteKind.projection()).check(data));
        Files.writeString(data.resolve(Journal.FILE), String.join("\n", lines.subList(0, 3)) + "\n");
        assertTrue(refused().startsWith("record 4: the journal was cut"), refused());
        assertEquals(3, Files.readAllLines(data.resolve(Journal.FILE)).size(), "nothing was changed");
        Files.writeString(data.resolve(Journal.FILE), String.join("\n", lines) + "\n");
        open();
    }

    @Test
    void a_folder_that_never_had_a_record_starts_again() throws Exception {
        open();
        open();
        Files.delete(data.resolve("skeinday.mv.db"));
        open();
    }

    /** As a kill after each of the first start's files leaves it; the journal is made before all that tells of use. */
    @Test
    void killed_at_each_file_of_the_first_start_it_starts_again() throws Exception {
        open();
        for (String kept : List.of(Journal.FILE, "skeinday.mv.db", People.FILE, FolderMark.FILE)) {
            Path part = Files.createDirectory(root.resolve("until-" + kept));
            for (String file : List.of(Journal.FILE, "skeinday.mv.db", People.FILE, FolderMark.FILE)) {
                if (Files.exists(data.resolve(file))) {
                    Files.copy(data.resolve(file), part.resolve(file));
                }
                if (file.equals(kept)) {
                    break;
                }
            }
            ActStore.open(part, NoteKind.projection(), Clock.systemUTC()).close();
            keep(part, 1, 1);
        }
    }

    @Test
    void a_journal_shorter_than_the_newest_backup_stops_the_start_and_makes_no_backup() throws Exception {
        keep(data, 1, 3);
        byte[] mark = Files.readAllBytes(data.resolve(FolderMark.FILE));
        byte[] journal = Files.readAllBytes(data.resolve(Journal.FILE));
        keep(data, 4, 5);
        Path five = Backup.make(data, backups, AT).folder();
        Files.delete(data.resolve("skeinday.mv.db"));
        Files.write(data.resolve(Journal.FILE), journal);
        Files.write(data.resolve(FolderMark.FILE), mark); // an older copy of the folder: the backup alone knows more
        assertTrue(refused().contains(five + " knows 5 records, the journal has 3"), refused());
        assertThrows(Damaged.class, () -> Backup.make(data, backups, AT.plusSeconds(5)));
        assertEquals(List.of(five), Backup.in(backups));
    }

    @Test
    void after_a_restore_of_an_older_backup_the_newer_ones_do_not_count_any_more() throws Exception {
        keep(data, 1, 3);
        Path three = Backup.make(data, backups, AT).folder();
        keep(data, 4, 5);
        Backup.make(data, backups, AT.plusSeconds(5));
        Restoring.restore(three, data, AT.plusSeconds(9));
        keep(data, 6, 6);
        assertEquals(4, Files.readAllLines(data.resolve(Journal.FILE)).size());
        assertEquals(4, Backup.make(data, backups, AT.plusSeconds(12)).records());
        Files.delete(data.resolve("skeinday.mv.db"));
        Files.writeString(data.resolve(Journal.FILE), "");
        assertTrue(refused().contains("knows 4 records"), refused());
    }

    @Test
    void a_restored_journal_that_is_cut_below_the_backup_is_refused() throws Exception {
        keep(data, 1, 3);
        Path three = Backup.make(data, root.resolve("stick"), AT).folder();
        Path other = root.resolve("other");
        Restoring.restore(three, other, AT);
        data = other;
        Files.writeString(data.resolve(Journal.FILE), "");
        assertTrue(refused().startsWith("record 1: the journal was cut"), refused());
    }

    @ParameterizedTest
    @ValueSource(strings = {Journal.FILE, People.FILE, "join-code", "port", Format.FILE, BackupList.FILE})
    void garbage_in_any_file_of_a_backup_is_one_sentence_and_changes_nothing(String file) throws Exception {
        keep(data, 1, 3);
        Files.writeString(data.resolve("join-code"), "0123456789abcdef".repeat(2));
        Files.writeString(data.resolve("port"), "8420");
        Path backup = Backup.make(data, root.resolve("stick"), AT).folder();
        byte[] good = Files.readAllBytes(backup.resolve(file));
        List<String> before = listing();
        for (byte[] bad :
                List.of(new byte[0], "null".getBytes(UTF_8), new byte[] {0, -1, 7}, cut(good), flipped(good))) {
            Files.write(backup.resolve(file), bad);
            String said = String.valueOf(
                    assertThrows(Damaged.class, () -> Restoring.restore(backup, data, AT), file + " " + bad.length)
                            .getMessage());
            assertFalse(said.contains("\n") || said.contains("Exception"), said);
            assertEquals(before, listing(), said);
        }
        Files.write(backup.resolve(file), good);
        Restoring.restore(backup, data, AT);
        assertEquals(List.of("Crew 1", "Crew 2", "Crew 3"), names());
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u00ff\u00fe", "\u0000\u0007", "none", "", "0"})
    void a_format_that_is_no_number_stops_the_start_with_one_sentence(String bytes) throws Exception {
        keep(data, 1, 1);
        Files.write(data.resolve(Format.FILE), bytes.getBytes(java.nio.charset.StandardCharsets.ISO_8859_1));
        assertTrue(refused().contains(Format.FILE + " holds no number. Put it back from a backup."), refused());
        Files.writeString(data.resolve(Format.FILE), Format.NEWEST + "\n");
        assertEquals(List.of("Crew 1"), names());
    }

    private static byte[] cut(byte[] whole) {
        return java.util.Arrays.copyOf(whole, whole.length - 1);
    }

    private static byte[] flipped(byte[] whole) {
        byte[] flipped = whole.clone();
        flipped[flipped.length / 2] ^= 4;
        return flipped;
    }

    private List<String> listing() throws IOException {
        try (Stream<Path> all = Files.list(data)) {
            return all.map(file -> file + " " + (Files.isDirectory(file) ? "" : Sha.hex(read(file))))
                    .sorted()
                    .toList();
        }
    }

    private static String read(Path file) {
        try {
            return new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
