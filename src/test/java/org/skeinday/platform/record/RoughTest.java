package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.platform.db.DatabaseTrouble;

/** Out of memory, and threads that are interrupted: nothing that was saved is lost, and it goes on. */
@Timeout(60)
class RoughTest {
    private static final WriterSettings QUICK = new WriterSettings(5_000, 50, 0);

    @TempDir
    Path root;

    private interface Use {
        void with(ActStore record, Writer writer) throws Exception;
    }

    private void open(JournalFile.Opener opener, ActKind<?> kind, Use use) throws Exception {
        Path folder = root.resolve("data");
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC(), opener);
                Writer writer = new Writer(record, List.of(kind), Clock.systemUTC(), QUICK, (topics, n) -> {})) {
            use.with(record, writer);
        }
        assertEquals(
                0,
                new Verify(NoteKind.projection()).check(folder).note().length(),
                "the database holds just the record");
    }

    @Test
    void memory_that_runs_out_in_a_deed_is_not_known_yet_and_the_writer_outlives_it() throws Exception {
        boolean[] full = {false};
        ActKind<NoteKind.Note> hungry = new ActKind<>("note.keep", NoteKind.Note.class, (tx, context, note) -> {
            if (full[0]) {
                full[0] = false;
                throw new OutOfMemoryError("Java heap space");
            }
            return NoteKind.ACT.action().decide(tx, context, note);
        });
        open(JournalFile::onDisk, hungry, (record, writer) -> {
            assertInstanceOf(Answer.Saved.class, writer.submit(NoteKind.act(1, "before")));
            full[0] = true;
            assertInstanceOf(Answer.NotYet.class, writer.submit(NoteKind.act(2, "during")));
            assertInstanceOf(Answer.Saved.class, again(writer, NoteKind.act(2, "during")));
            assertEquals(List.of("before", "during"), NoteKind.texts(record));
            assertEquals("", writer.trouble());
        });
    }

    @Test
    void memory_that_runs_out_between_the_line_and_its_force_counts_the_act_once() throws Exception {
        var disk = new FailingDisk();
        open(disk, NoteKind.ACT, (record, writer) -> {
            disk.memoryOutAtForce = true;
            assertInstanceOf(Answer.NotYet.class, writer.submit(NoteKind.act(1, "unsure")));
            assertFalse(writer.trouble().isEmpty(), "every page says it");
            disk.memoryOutAtForce = false;
            assertEquals(new Answer.Saved(1, String.format("%032x", 1)), again(writer, NoteKind.act(1, "unsure")));
            assertEquals(List.of("unsure"), NoteKind.texts(record));
        });
    }

    @Test
    void an_interrupted_writer_loses_nothing_and_goes_on() throws Exception {
        Thread[] writing = {null};
        Set<String> met = new HashSet<>();
        ActKind<NoteKind.Note> seen = new ActKind<>("note.keep", NoteKind.Note.class, (tx, context, note) -> {
            writing[0] = Thread.currentThread();
            if (note.text().endsWith("7") && met.add(note.text())) {
                Thread.currentThread().interrupt(); // the next touch of a file closes it
            }
            return NoteKind.ACT.action().decide(tx, context, note);
        });
        open(JournalFile::onDisk, seen, (record, writer) -> {
            for (int i = 1; i <= 40; i++) {
                assertInstanceOf(Answer.Saved.class, again(writer, NoteKind.act(i, "note " + i)), "note " + i);
                if (i % 5 == 0) {
                    writing[0].interrupt(); // while it waits
                }
            }
            assertEquals(4, met.size());
            assertEquals(40, texts(record).size());
        });
    }

    @Test
    void interrupted_readers_close_no_file_for_good() throws Exception {
        open(JournalFile::onDisk, NoteKind.ACT, (record, writer) -> {
            List<Thread> readers = new ArrayList<>();
            boolean[] over = {false};
            for (int i = 0; i < 4; i++) {
                Thread reader = new Thread(() -> {
                    while (!over[0]) {
                        try {
                            NoteKind.texts(record);
                        } catch (RuntimeException e) {
                            Thread.interrupted(); // as a pool's thread goes on with the next page
                        }
                    }
                });
                reader.setDaemon(true);
                reader.start();
                readers.add(reader);
            }
            for (int i = 1; i <= 60; i++) {
                readers.get(i % 4).interrupt();
                assertInstanceOf(Answer.Saved.class, again(writer, NoteKind.act(i, "note " + i)), "note " + i);
            }
            over[0] = true;
            for (Thread reader : readers) {
                reader.join();
            }
            assertEquals(60, texts(record).size());
        });
    }

    private static List<String> texts(ActStore record) throws InterruptedException {
        for (int i = 0; i < 3_000; i++) {
            try {
                return NoteKind.texts(record);
            } catch (DatabaseTrouble e) {
                Thread.sleep(10); // just being opened again
            }
        }
        return NoteKind.texts(record);
    }

    private static Answer again(Writer writer, Act act) {
        Answer answer = writer.submit(act);
        for (int i = 0; i < 200 && answer instanceof Answer.NotYet; i++) {
            answer = writer.submit(act);
        }
        assertTrue(answer instanceof Answer.Saved, String.valueOf(answer));
        return answer;
    }
}
