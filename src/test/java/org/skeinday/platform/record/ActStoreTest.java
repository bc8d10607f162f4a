package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.platform.db.Database;

class ActStoreTest {
    private static final WriterSettings QUICK = new WriterSettings(5_000, 50, 0);

    @TempDir
    Path root;

    private Path folder;
    private final List<Set<String>> published = new ArrayList<>();

    @BeforeEach
    void nameTheFolder() {
        folder = root.resolve("data");
    }

    private interface Use {
        void with(ActStore record, Writer writer) throws Exception;
    }

    private void open(Use use) throws Exception {
        open(JournalFile::onDisk, use);
    }

    private void open(JournalFile.Opener opener, Use use) throws Exception {
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC(), opener);
                Writer writer = writer(record)) {
            use.with(record, writer);
        }
    }

    private Writer writer(ActStore record) {
        return new Writer(
                record, List.of(NoteKind.ACT), Clock.systemUTC(), QUICK, (topics, n) -> published.add(topics));
    }

    private void keep(int count) throws Exception {
        open((record, writer) -> {
            for (int i = 1; i <= count; i++) {
                assertInstanceOf(Answer.Saved.class, writer.submit(NoteKind.act(i, "note " + i)));
            }
        });
    }

    private Path journal() {
        return folder.resolve(Journal.FILE);
    }

    private Path database() {
        return Database.file(folder, ActStore.DATABASE);
    }

    private void assertNotes(int count) throws Exception {
        open((record, writer) -> assertEquals(count, NoteKind.texts(record).size()));
    }

    @Test
    void what_was_saved_is_there_after_a_restart_and_published_once() throws Exception {
        keep(3);
        assertNotes(3);
        assertEquals(List.of(Set.of("notes"), Set.of("notes"), Set.of("notes")), published);
    }

    @Test
    void a_repeat_gets_its_old_answer_and_counts_once() throws Exception {
        keep(3);
        open((record, writer) -> {
            assertEquals(new Answer.Saved(2, String.format("%032x", 2)), writer.submit(NoteKind.act(2, "note 2")));
            assertEquals(3, NoteKind.texts(record).size());
        });
    }

    @Test
    void the_same_number_for_something_else_is_a_conflict() throws Exception {
        keep(1);
        open((record, writer) -> assertInstanceOf(Answer.Conflict.class, writer.submit(NoteKind.act(1, "other"))));
    }

    @Test
    void a_refusal_is_not_recorded_and_may_be_sent_again_corrected() throws Exception {
        open((record, writer) -> {
            var refused = assertInstanceOf(Answer.Refused.class, writer.submit(NoteKind.act(1, " ")));
            assertEquals("A note needs words", refused.fields().get("text"));
            assertEquals(new Answer.Saved(1, String.format("%032x", 1)), writer.submit(NoteKind.act(1, "words")));
        });
    }

    @Test
    void content_of_another_form_and_unknown_kinds_are_refused_in_words() throws Exception {
        open((record, writer) -> {
            var unknown = new Act(
                    "0".repeat(32), "note.sing", "t", "", java.time.Instant.EPOCH, Json.MAPPER.createObjectNode());
            var refused = assertInstanceOf(Answer.Refused.class, writer.submit(unknown));
            assertTrue(refused.reason().contains("note.sing"), refused.reason());
            var misshapen = new Act(
                    "1".repeat(32),
                    "note.keep",
                    "t",
                    "",
                    java.time.Instant.EPOCH,
                    Json.MAPPER.createObjectNode().put("colour", "red"));
            assertInstanceOf(Answer.Refused.class, writer.submit(misshapen));
        });
        assertEquals(0, Files.size(journal()));
    }

    @Test
    void an_act_that_cannot_be_applied_harms_no_other() throws Exception {
        open((record, writer) -> {
            assertInstanceOf(Answer.Saved.class, writer.submit(NoteKind.act(1, "a")));
            assertInstanceOf(Answer.Refused.class, writer.submit(NoteKind.act(2, "cannot be applied")));
            assertInstanceOf(Answer.Saved.class, writer.submit(NoteKind.act(3, "b")));
            assertEquals(List.of("a", "b"), NoteKind.texts(record));
        });
    }

    @Test
    void a_database_deleted_emptied_halved_or_cut_by_a_byte_is_built_anew() throws Exception {
        keep(40);
        Files.delete(database());
        assertNotes(40);
        for (double share : new double[] {0, 0.5}) {
            cut(database(), (long) (Files.size(database()) * share));
            assertNotes(40);
        }
        cut(database(), Files.size(database()) - 1);
        assertNotes(40);
    }

    private static void cut(Path file, long length) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.truncate(length);
        }
    }

    @Test
    void an_unusable_database_is_kept_aside() throws Exception {
        keep(2);
        cut(database(), 100);
        assertNotes(2);
        try (var files = Files.list(folder)) {
            assertTrue(files.anyMatch(f -> f.getFileName().toString().contains("set-aside")));
        }
    }

    @Test
    void a_database_that_opens_but_does_not_take_the_next_line_is_built_anew() throws Exception {
        keep(2);
        Path old = root.resolve("old.mv.db");
        Files.copy(database(), old);
        keep(3);
        Files.move(old, database(), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        try (Database spoiled = Database.open(folder, ActStore.DATABASE)) {
            String taken = String.format("%032x-0", 3);
            spoiled.writing().tx().sql().execute("insert into note (id, text, at_ms) values ('" + taken + "', 'x', 0)");
            spoiled.writing().commit();
        }
        assertNotes(3);
    }

    @Test
    void rows_that_an_unfinished_building_left_are_never_built_upon() throws Exception {
        keep(3);
        Files.delete(database());
        try (Database unfinished = Database.open(folder, ActStore.DATABASE)) {
            String act = String.format("%032x", 2);
            unfinished.writing().tx().sql().execute("insert into act (id, sum, n) values ('" + act + "', 'x', 2)");
            unfinished.writing().commit();
        }
        assertNotes(3);
    }

    @Test
    void a_journal_cut_by_a_line_is_damage_that_names_the_record() throws Exception {
        keep(5);
        List<String> lines = Files.readAllLines(journal());
        Files.writeString(journal(), String.join("\n", lines.subList(0, 4)) + "\n");
        Damaged damaged = assertThrows(Damaged.class, () -> assertNotes(4));
        assertTrue(damaged.getMessage().startsWith("record 5: the journal was cut"), damaged.getMessage());
    }

    @Test
    void an_altered_line_is_damage_that_names_the_record() throws Exception {
        keep(5);
        Files.writeString(journal(), Files.readString(journal()).replace("note 3", "note 9"));
        Damaged damaged = assertThrows(Damaged.class, () -> assertNotes(5));
        assertTrue(damaged.getMessage().startsWith("record 3:"), damaged.getMessage());
    }

    @Test
    void a_missing_journal_is_never_taken_for_a_fresh_day() throws Exception {
        keep(1);
        Files.delete(journal());
        assertThrows(Damaged.class, () -> assertNotes(0));
    }

    @Test
    void a_database_of_another_record_is_damage() throws Exception {
        keep(2);
        Path foreign = root.resolve("foreign.mv.db");
        Files.move(database(), foreign);
        Files.delete(journal());
        Files.delete(folder.resolve("skeinday-folder.txt"));
        open((record, writer) -> {
            writer.submit(NoteKind.act(8, "other"));
            writer.submit(NoteKind.act(9, "day"));
        });
        Files.move(foreign, database(), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        assertThrows(Damaged.class, () -> assertNotes(2));
    }

    @Test
    void a_torn_last_line_is_cut_and_kept_beside() throws Exception {
        keep(3);
        Files.writeString(journal(), "{\"n\":4,\"v\":1,\"at", StandardOpenOption.APPEND);
        open((record, writer) -> {
            assertEquals(3, NoteKind.texts(record).size());
            assertEquals(new Answer.Saved(4, String.format("%032x", 4)), writer.submit(NoteKind.act(4, "after")));
        });
        assertTrue(Files.exists(folder.resolve("torn-after-3.jsonl")));
        assertNotes(4);
    }

    @Test
    void a_second_start_in_the_folder_is_told_where_the_first_runs() throws Exception {
        open((record, writer) -> {
            record.runningAt("http://localhost:7070");
            AlreadyRunning refused = assertThrows(AlreadyRunning.class, () -> assertNotes(0));
            assertTrue(refused.getMessage().contains("http://localhost:7070"), refused.getMessage());
        });
        assertNotes(0);
    }

    @Test
    void names_stand_beside_the_chain_and_not_in_it() throws Exception {
        open((record, writer) -> {
            writer.submit(NoteKind.act(1, "name Ines"));
            assertEquals("Ines", record.people().name(String.format("%032x", 1) + "-0"));
        });
        assertTrue(Files.readString(folder.resolve(People.FILE)).contains("Ines"));
    }

    @Test
    void a_commit_that_fails_after_the_force_is_made_good_from_the_journal() throws Exception {
        open((record, writer) -> {
            writer.submit(NoteKind.act(1, "before"));
            shutDownUnder(record);
            Answer first = writer.submit(NoteKind.act(2, "during"));
            assertInstanceOf(Answer.NotYet.class, first);
            assertEquals(new Answer.Saved(2, String.format("%032x", 2)), again(writer, NoteKind.act(2, "during")));
            assertEquals(List.of("before", "during"), NoteKind.texts(record));
        });
    }

    @Test
    void a_database_that_fails_under_a_reader_is_opened_again_without_anybody_writing() throws Exception {
        open((record, writer) -> {
            writer.submit(NoteKind.act(1, "before"));
            shutDownUnder(record);
            List<String> read = List.of();
            for (int i = 0; i < 3_000 && read.isEmpty(); i++) {
                try {
                    read = NoteKind.texts(record);
                } catch (org.skeinday.platform.db.DatabaseTrouble e) {
                    Thread.sleep(10);
                }
            }
            assertEquals(List.of("before"), read);
        });
    }

    /** H2 closes beneath the program, as it does when its disk fails. */
    private static void shutDownUnder(ActStore record) {
        assertThrows(
                RuntimeException.class,
                () -> record.database().read(tx -> tx.sql().execute("shutdown immediately")));
    }

    private static Answer again(Writer writer, Act act) {
        Answer answer = writer.submit(act);
        for (int i = 0; i < 200 && answer instanceof Answer.NotYet; i++) {
            answer = writer.submit(act);
        }
        return answer;
    }

    @Test
    void a_full_disk_takes_nothing_back_that_was_saved_and_goes_on_when_there_is_space() throws Exception {
        var disk = new FailingDisk();
        open(disk, (record, writer) -> {
            assertInstanceOf(Answer.Saved.class, writer.submit(NoteKind.act(1, "before")));
            disk.failAppends = true;
            assertInstanceOf(Answer.DiskFull.class, writer.submit(NoteKind.act(2, "lost")));
            assertFalse(writer.trouble().isEmpty());
            assertEquals(List.of("before"), NoteKind.texts(record));
            disk.failAppends = false;
            assertInstanceOf(Answer.Saved.class, writer.submit(NoteKind.act(2, "lost")));
            assertTrue(writer.trouble().isEmpty());
        });
        assertNotes(2);
    }

    @Test
    void a_failed_force_is_never_repeated_on_the_same_descriptor() throws Exception {
        var disk = new FailingDisk();
        open(disk, (record, writer) -> {
            disk.failForces = true;
            assertInstanceOf(Answer.NotYet.class, writer.submit(NoteKind.act(1, "unsure")));
            int opened = disk.opened;
            disk.failForces = false;
            assertInstanceOf(Answer.Saved.class, again(writer, NoteKind.act(1, "unsure")));
            assertTrue(disk.opened > opened, "the file was opened anew");
            assertEquals(List.of("unsure"), NoteKind.texts(record));
        });
    }

    @Test
    void with_too_little_space_nothing_is_taken_and_reading_goes_on() throws Exception {
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer = new Writer(
                        record,
                        List.of(NoteKind.ACT),
                        Clock.systemUTC(),
                        new WriterSettings(5_000, 50, Long.MAX_VALUE),
                        (topics, n) -> {})) {
            assertInstanceOf(Answer.DiskFull.class, writer.submit(NoteKind.act(1, "a")));
            assertEquals(List.of(), NoteKind.texts(record));
        }
    }

    @Test
    void who_has_an_answer_finds_it_published() throws Exception {
        var told = new AtomicInteger();
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer = new Writer(record, List.of(NoteKind.ACT), Clock.systemUTC(), QUICK, (topics, n) -> {
                    LockSupport.parkNanos(20_000_000); // an answer that came before would be read meanwhile
                    told.incrementAndGet();
                })) {
            for (int i = 1; i <= 5; i++) {
                assertInstanceOf(Answer.Saved.class, writer.submit(NoteKind.act(i, "n" + i)));
                assertEquals(i, told.get(), "published before the answer");
            }
        }
    }

    @Test
    void every_answer_comes_after_a_force() throws Exception {
        var disk = new FailingDisk();
        open(disk, (record, writer) -> {
            for (int i = 1; i <= 20; i++) {
                assertInstanceOf(Answer.Saved.class, writer.submit(NoteKind.act(i, "n" + i)));
                assertEquals(disk.bytesAppended, disk.bytesForced, "all that was appended is forced at the answer");
            }
        });
    }
}
