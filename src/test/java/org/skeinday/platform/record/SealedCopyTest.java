package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.platform.db.Database;

/** After a kill a start goes on from the newest sealed copy of the database, and at any doubt in it from the first line. */
class SealedCopyTest {
    private static final int COPIED = (int) CopyMaker.LACKING;
    private static final int ALL = COPIED + 3;
    private static final WriterSettings QUICK = new WriterSettings(5_000, 50, 0);

    @TempDir
    Path root;

    private Path folder;

    /** The first start builds what is long enough to be copied; three notes more come in; then the program is killed. */
    @BeforeEach
    void keepNotesAndKill() throws Exception {
        folder = folder("data", "note", COPIED);
        try (ActStore record = open();
                Writer writer =
                        new Writer(record, List.of(NoteKind.ACT), Clock.systemUTC(), QUICK, (topics, n) -> {})) {
            for (int i = COPIED + 1; i <= ALL; i++) {
                writer.submit(NoteKind.act(i, "note " + i));
            }
        }
        kill();
    }

    /** A folder with a journal and nothing else. */
    private Path folder(String name, String word, int notes) throws IOException {
        Path made = Files.createDirectories(root.resolve(name));
        String prev = "";
        try (BufferedWriter journal = Files.newBufferedWriter(made.resolve(Journal.FILE))) {
            for (int n = 1; n <= notes; n++) {
                Act act = NoteKind.act(n, word + " " + n);
                var fact = Fact.of("note.kept", new NoteKind.NoteKept(act.id() + "-0", word + " " + n, n));
                JournalLine line = JournalLine.made(n, n, act, Deciding.sum(act), List.of(fact), prev);
                journal.write(line.text() + "\n");
                prev = line.hash();
            }
        }
        return made;
    }

    private ActStore open() throws IOException {
        return ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
    }

    private void kill() throws IOException {
        Files.delete(folder.resolve(Seal.FILE));
    }

    private static List<String> notes(int last) {
        return IntStream.rangeClosed(1, last).mapToObj(i -> "note " + i).toList();
    }

    private SealedCopy copy() throws IOException {
        return SealedCopy.newest(folder).orElseThrow();
    }

    private Path sealOfCopy() throws IOException {
        return folder.resolve(copy().file().getFileName() + ".seal");
    }

    /** @return whether it was built from the first line on */
    private boolean startsWithAllNotes() throws IOException {
        try (ActStore record = open()) {
            assertEquals(notes(ALL), NoteKind.texts(record));
            assertEquals(ALL, record.journal().n());
            return record.heldBefore() == 0;
        }
    }

    private void assertBuiltAnewBecauseOf(String what) throws IOException {
        assertTrue(startsWithAllNotes(), what);
        new Verify(NoteKind.projection()).check(folder);
    }

    @Test
    void after_a_kill_only_what_the_copy_lacks_is_put_into_the_database() throws Exception {
        assertEquals(COPIED, copy().end().n());
        assertFalse(startsWithAllNotes(), "not from the first line");
        new Verify(NoteKind.projection()).check(folder);
        assertFalse(startsWithAllNotes(), "closed in good order");
        assertEquals(COPIED, copy().end().n(), "three notes are not worth another");
    }

    @Test
    void what_the_killed_program_left_in_its_database_is_not_used() throws Exception {
        try (Database spoiled = Database.open(folder, ActStore.DATABASE)) {
            spoiled.writing().tx().sql().execute("update note set text = 'note 9' where text = 'note 3'");
            spoiled.writing().commit();
        }
        assertFalse(startsWithAllNotes());
    }

    @Test
    void a_copy_that_was_cut_or_changed_is_not_used() throws Exception {
        byte[] whole = Files.readAllBytes(copy().file());
        byte[] flipped = whole.clone();
        flipped[whole.length / 2] ^= 4;
        byte[] cut = java.util.Arrays.copyOf(whole, whole.length - 1);
        for (byte[] bad : List.of(new byte[0], cut, flipped)) {
            Files.write(copy().file(), bad);
            assertBuiltAnewBecauseOf(bad.length + " bytes");
            assertEquals(ALL, copy().end().n(), "another was made");
            kill();
        }
    }

    @Test
    void a_copy_whose_seal_is_gone_or_garbled_is_not_used() throws Exception {
        String seal = Files.readString(sealOfCopy());
        for (String bad : List.of(
                "",
                "{",
                "[]",
                seal.substring(1),
                seal.replaceAll("\"sum\":\"..", "\"sum\":\"zz"),
                seal.replace(":", ";"))) {
            Files.writeString(sealOfCopy(), bad);
            assertBuiltAnewBecauseOf(bad);
            kill();
            seal = Files.readString(sealOfCopy());
        }
        Files.delete(sealOfCopy());
        assertBuiltAnewBecauseOf("no seal");
    }

    /** With its own seal in order, as somebody would have it who puts folders together by hand. */
    private void takeCopyOf(Path other) throws IOException {
        ActStore.open(other, NoteKind.projection(), Clock.systemUTC()).close();
        SealedCopy.removeAll(folder);
        try (Stream<Path> files = Files.list(other)) {
            for (Path file : files.filter(f -> f.getFileName().toString().startsWith("database-copy-"))
                    .toList()) {
                Files.copy(file, folder.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    @Test
    void a_copy_of_another_folder_is_not_used() throws Exception {
        takeCopyOf(folder("other", "word", COPIED));
        assertBuiltAnewBecauseOf("another record");
    }

    @Test
    void a_copy_that_is_newer_than_the_journal_is_not_used() throws Exception {
        takeCopyOf(folder("longer", "note", ALL + 2));
        assertEquals(ALL + 2, copy().end().n());
        assertBuiltAnewBecauseOf("newer than the journal");
        assertEquals(ALL, copy().end().n());
    }

    @Test
    void a_copy_of_another_schema_is_not_used() throws Exception {
        Path file = folder.resolve("changed.mv.db");
        Files.copy(copy().file(), file);
        try (Database older = Database.open(folder, "changed")) {
            older.writing().tx().sql().execute("update schema_made set hash = 'of an earlier text'");
            older.writing().commit();
        }
        SealedCopy.take(folder, file, copy().end());
        assertBuiltAnewBecauseOf("another schema");
    }

    @Test
    void what_was_killed_while_it_was_copied_does_no_harm() throws Exception {
        Files.write(Database.file(folder, "copy-being-made"), new byte[] {1, 2, 3});
        Files.write(Database.file(folder, "database-copy-000000009999"), new byte[] {4, 5, 6});
        Files.writeString(folder.resolve("database-copy-000000009999.mv.db.seal.new"), "{\"n\":99");
        assertFalse(startsWithAllNotes());
    }

    @Test
    void killed_while_another_database_is_made_the_next_start_begins_again() throws Exception {
        LeftOpen.moveAside(folder);
        Files.write(Database.file(folder, ActStore.DATABASE), new byte[] {1, 2, 3});
        assertFalse(startsWithAllNotes());
        kill();
        LeftOpen.moveAside(folder);
        assertFalse(startsWithAllNotes(), "before anything was made");
    }

    @Test
    void a_journal_that_was_cut_or_changed_is_refused_whatever_the_copy_says() throws Exception {
        List<String> lines = Files.readAllLines(folder.resolve(Journal.FILE));
        List<String> changed = new ArrayList<>(lines);
        changed.set(4, lines.get(4).replace("note 5", "note 6"));
        for (var bad : Map.of("record " + (ALL - 1), lines.subList(0, ALL - 2), "record 5", changed)
                .entrySet()) {
            Files.writeString(folder.resolve(Journal.FILE), String.join("\n", bad.getValue()) + "\n");
            for (int start = 1; start <= 2; start++) {
                Damaged damaged = assertThrows(Damaged.class, this::open);
                assertTrue(damaged.getMessage().startsWith(bad.getKey() + ":"), damaged.getMessage());
            }
        }
        Files.writeString(folder.resolve(Journal.FILE), String.join("\n", lines) + "\n");
        assertFalse(startsWithAllNotes(), "put back, it is whole");
    }

    @Test
    void a_copy_is_brought_up_to_the_record_while_the_program_runs() throws Exception {
        try (ActStore record = open();
                Writer writer =
                        new Writer(record, List.of(NoteKind.ACT), Clock.systemUTC(), QUICK, (topics, n) -> {})) {
            record.keepCopy();
            assertEquals(COPIED, copy().end().n(), "near enough");
            IntStream.rangeClosed(ALL + 1, 2 * ALL)
                    .parallel()
                    .forEach(i -> writer.submit(NoteKind.act(i, "more " + i)));
            record.keepCopy();
            assertEquals(2 * ALL, copy().end().n());
            writer.submit(NoteKind.act(2 * ALL + 1, "the last"));
        }
        kill();
        try (ActStore record = open()) {
            assertEquals(2 * ALL, record.heldBefore());
            assertEquals(2 * ALL + 1, NoteKind.texts(record).size());
        }
        assertEquals(0, new Verify(NoteKind.projection()).check(folder).note().length());
    }

    @Test
    void a_copy_that_cannot_be_brought_up_to_the_record_is_made_from_the_first_line() throws Exception {
        Files.write(copy().file(), new byte[] {1});
        var end = JournalReader.check(folder.resolve(Journal.FILE));
        new CopyMaker(folder, NoteKind.projection(), 1).upTo(end);
        assertEquals(ALL, copy().end().n());
        assertFalse(startsWithAllNotes(), "from the new one");
    }

    @Test
    void no_name_is_in_a_copy() throws Exception {
        try (ActStore record = open()) {
            record.people().add(Map.of("p1", "Wilhelmina Quatremain"));
            new CopyMaker(folder, NoteKind.projection(), 1)
                    .upTo(record.journal().end());
        }
        String bytes = Files.readString(copy().file(), StandardCharsets.ISO_8859_1);
        assertTrue(Files.readString(folder.resolve(People.FILE)).contains("Quatremain"));
        assertFalse(bytes.contains("Quatremain"));
        assertTrue(bytes.contains("note 7"), "what it holds is written plainly");
    }

    @Test
    void what_a_kill_left_is_set_aside_with_the_rest_when_a_backup_is_put_back() throws Exception {
        Files.writeString(
                folder.resolve(Journal.FILE),
                Files.readAllLines(folder.resolve(Journal.FILE)).get(0) + "\n");
        Files.delete(folder.resolve(FolderMark.FILE));
        Path backup =
                Backup.make(folder, root.resolve("backups"), Instant.EPOCH).folder();
        LeftOpen.moveAside(folder);
        Restoring.restore(backup, folder, Instant.EPOCH);
        try (ActStore record = open()) {
            assertEquals(notes(1), NoteKind.texts(record));
        }
        assertTrue(Files.exists(LeftOpen.file(folder.resolve("set-aside-19700101-000000"))));
    }

    @Test
    void building_anew_on_request_uses_no_copy() throws Exception {
        assertEquals(
                ALL,
                new Verify(NoteKind.projection())
                        .rebuild(folder, Clock.systemUTC())
                        .records());
        assertEquals(ALL, copy().end().n(), "another was made of what was built");
    }
}
