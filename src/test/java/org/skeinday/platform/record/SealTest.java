package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.platform.db.Database;

/** A database is used again only when its bytes are the ones that were closed in good order. */
class SealTest {
    private static final WriterSettings QUICK = new WriterSettings(5_000, 50, 0);

    @TempDir
    Path root;

    private Path folder;
    private Path file;

    @BeforeEach
    void keepFiveNotes() throws Exception {
        folder = root.resolve("data");
        file = Database.file(folder, ActStore.DATABASE);
        try (ActStore record = open();
                Writer writer =
                        new Writer(record, List.of(NoteKind.ACT), Clock.systemUTC(), QUICK, (topics, n) -> {})) {
            for (int i = 1; i <= 5; i++) {
                writer.submit(NoteKind.act(i, "note " + i));
            }
        }
    }

    private ActStore open() throws IOException {
        return ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
    }

    private boolean builtAnew() throws IOException {
        try (ActStore record = open()) {
            assertEquals(5, NoteKind.texts(record).size());
            return record.database().isFresh();
        }
    }

    @Test
    void a_database_that_was_closed_in_good_order_is_used_again() throws Exception {
        assertFalse(builtAnew());
        assertFalse(builtAnew(), "and the one after that");
    }

    @Test
    void one_that_a_kill_left_open_is_built_anew() throws Exception {
        Files.delete(folder.resolve(Seal.FILE));
        assertTrue(builtAnew());
        assertFalse(builtAnew(), "once");
    }

    @Test
    void a_single_flipped_bit_anywhere_in_its_file_breaks_the_seal() throws Exception {
        byte[] whole = Files.readAllBytes(file);
        byte[] seal = Files.readAllBytes(folder.resolve(Seal.FILE));
        SplittableRandom random = new SplittableRandom(20_261_126);
        for (int i = 0; i < 300; i++) {
            byte[] flipped = whole.clone();
            flipped[random.nextInt(flipped.length)] ^= (byte) (1 << random.nextInt(8));
            Files.write(file, flipped);
            Files.write(folder.resolve(Seal.FILE), seal);
            assertTrue(Seal.broken(folder, file), "flip " + i);
        }
        Files.write(file, whole);
        Files.write(folder.resolve(Seal.FILE), seal);
        assertFalse(Seal.broken(folder, file));
    }

    @Test
    void an_altered_row_is_gone_after_the_next_start() throws Exception {
        try (Database spoiled = Database.open(folder, ActStore.DATABASE)) {
            spoiled.writing().tx().sql().execute("update note set text = 'note 9' where text = 'note 3'");
            spoiled.writing().commit();
        }
        try (ActStore record = open()) {
            assertEquals(List.of("note 1", "note 2", "note 3", "note 4", "note 5"), NoteKind.texts(record));
        }
    }

    @Test
    void a_cut_journal_is_seen_by_a_database_that_is_not_sealed_too() throws Exception {
        Files.delete(folder.resolve(Seal.FILE));
        List<String> lines = Files.readAllLines(folder.resolve(Journal.FILE));
        Files.writeString(folder.resolve(Journal.FILE), String.join("\n", lines.subList(0, 4)) + "\n");
        Damaged damaged = assertThrows(Damaged.class, this::builtAnew);
        assertTrue(damaged.getMessage().startsWith("record 5: the journal was cut"), damaged.getMessage());
    }

    @Test
    void verify_leaves_the_seal_whole_or_breaks_it() throws Exception {
        new Verify(NoteKind.projection()).check(folder);
        assertFalse(builtAnew());
        Files.delete(folder.resolve(Seal.FILE));
        new Verify(NoteKind.projection()).check(folder);
        assertFalse(builtAnew(), "it has been compared row by row");
    }
}
