package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
    private static final WriterSettings QUICK = new WriterSettings(5_000, 50, 0);
    private static final String CODE = "0123456789abcdef".repeat(2);
    private static final Instant AT = Instant.parse("2026-05-09T08:15:00Z");

    @TempDir
    Path root;

    private Path data;
    private Path place;

    @BeforeEach
    void name() {
        data = root.resolve("data");
        place = root.resolve("place");
    }

    private interface Use {
        void with(ActStore record, Writer writer) throws Exception;
    }

    private void open(Use use) throws Exception {
        try (ActStore record = ActStore.open(data, NoteKind.projection(), Clock.systemUTC());
                Writer writer =
                        new Writer(record, List.of(NoteKind.ACT), Clock.systemUTC(), QUICK, (topics, n) -> {})) {
            use.with(record, writer);
        }
    }

    private void keep(int from, int to) throws Exception {
        open((record, writer) -> {
            for (int i = from; i <= to; i++) {
                writer.submit(NoteKind.act(i, "note " + i));
            }
            record.people().add(Map.of("p1", "Ayla"));
        });
    }

    private int notes() throws Exception {
        int[] count = {0};
        open((record, writer) -> count[0] = NoteKind.texts(record).size());
        return count[0];
    }

    @Test
    void a_backup_made_while_people_go_on_is_whole_and_holds_what_was_saved_before() throws Exception {
        keep(1, 50);
        open((record, writer) -> {
            var other = new Thread(() -> {
                for (int i = 51; i <= 400; i++) {
                    writer.submit(NoteKind.act(i, "note " + i));
                }
            });
            other.start();
            for (int i = 0; i < 20; i++) {
                Backup.Made made = Backup.make(data, place, AT.plusSeconds(i));
                assertEquals(made, BackupCheck.check(made.folder()));
                assertTrue(made.records() >= 50, made.toString());
            }
            other.join();
        });
    }

    @Test
    void a_restored_record_is_the_one_of_then_and_what_was_there_is_set_aside() throws Exception {
        keep(1, 5);
        Files.writeString(data.resolve("join-code"), CODE);
        Backup.Made made = Backup.make(data, place, AT);
        keep(6, 9);
        byte[] later = Files.readAllBytes(data.resolve(Journal.FILE));
        Restoring.restore(made.folder(), data, AT.plusSeconds(60));
        assertEquals(5, notes());
        Path aside = data.resolve("set-aside-20260509-081600");
        assertEquals(-1, java.util.Arrays.mismatch(later, Files.readAllBytes(aside.resolve(Journal.FILE))));
        assertEquals(CODE, Files.readString(data.resolve("join-code")));
    }

    @Test
    void a_backup_that_was_cut_or_changed_is_refused_and_nothing_is_touched() throws Exception {
        keep(1, 5);
        Path cut = Backup.make(data, place, AT).folder();
        Path changed = Backup.make(data, place, AT.plusSeconds(1)).folder();
        List<String> lines = Files.readAllLines(cut.resolve(Journal.FILE));
        Files.write(cut.resolve(Journal.FILE), lines.subList(0, 3));
        Path journal = changed.resolve(Journal.FILE);
        Files.writeString(journal, Files.readString(journal).replace("note 4", "note 7"));
        byte[] before = Files.readAllBytes(data.resolve(Journal.FILE));
        for (Path bad : List.of(cut, changed)) {
            String said = assertThrows(Damaged.class, () -> Restoring.restore(bad, data, AT))
                    .getMessage();
            assertTrue(said.startsWith("record 4"), said);
        }
        assertEquals(-1, java.util.Arrays.mismatch(before, Files.readAllBytes(data.resolve(Journal.FILE))));
        assertEquals(5, notes());
    }

    @Test
    void a_code_that_was_replaced_since_stays_shut_and_one_that_is_lost_comes_back() throws Exception {
        keep(1, 2);
        Files.writeString(data.resolve("join-code"), CODE);
        Backup.Made made = Backup.make(data, place, AT);
        String newer = "ab".repeat(16);
        Files.writeString(data.resolve("join-code"), newer);
        Restoring.restore(made.folder(), data, AT.plusSeconds(60));
        assertEquals(newer, Files.readString(data.resolve("join-code")));
        Files.writeString(data.resolve("join-code"), "");
        Restoring.restore(made.folder(), data, AT.plusSeconds(60)); // in the same second
        assertEquals(CODE, Files.readString(data.resolve("join-code")));
        assertTrue(Files.exists(data.resolve("set-aside-20260509-081600").resolve(Journal.FILE)));
        assertTrue(Files.exists(data.resolve("set-aside-20260509-081600-2").resolve(Journal.FILE)));
    }

    @Test
    void an_empty_code_is_no_part_of_a_backup_and_no_reason_to_refuse_it() throws Exception {
        keep(1, 2);
        Files.writeString(data.resolve("join-code"), "");
        Path made = Backup.make(data, place, AT).folder();
        assertTrue(Files.notExists(made.resolve("join-code")));
        assertEquals(2, Restoring.restore(made, data, AT.plusSeconds(60)).records());
    }

    @Test
    void what_a_kill_left_half_made_goes_with_the_next_but_one_in_the_making_stays() throws Exception {
        keep(1, 2);
        Path old = Files.createDirectories(place.resolve("backup-20260509-081459.part"));
        Files.writeString(old.resolve(People.FILE), "{}");
        Files.writeString(old.resolve("backup.json.written-aside"), "{}");
        Path now = Files.createDirectories(place.resolve("backup-20260509-081530.part"));
        Backup.make(data, place, AT);
        Backup.prune(data, place);
        assertTrue(Files.notExists(old));
        assertTrue(Files.exists(now));
    }

    @Test
    void a_line_that_was_being_written_is_no_part_of_a_backup() throws Exception {
        keep(1, 3);
        Files.writeString(data.resolve(Journal.FILE), "{\"n\":4,\"v\"", StandardOpenOption.APPEND);
        assertEquals(3, Backup.make(data, place, AT).records());
    }

    @Test
    void a_record_that_is_damaged_makes_no_backup_and_leaves_the_good_ones() throws Exception {
        keep(1, 3);
        Backup.make(data, place, AT);
        Path journal = data.resolve(Journal.FILE);
        Files.writeString(journal, Files.readString(journal).replace("note 2", "note 8"));
        assertThrows(Damaged.class, () -> Backup.make(data, place, AT.plusSeconds(5)));
        assertEquals(1, Backup.in(place).size());
    }

    @Test
    void the_newest_twenty_are_kept_and_what_else_lies_there_stays() throws Exception {
        keep(1, 2);
        Files.createDirectories(place);
        Files.writeString(place.resolve("note.txt"), "mine");
        for (int i = 0; i < 23; i++) {
            Backup.make(data, place, AT.plusSeconds(i));
        }
        Backup.prune(data, place);
        List<Path> left = Backup.in(place);
        assertEquals(20, left.size());
        assertEquals("backup-20260509-081503", left.get(0).getFileName().toString());
        assertTrue(Files.exists(place.resolve("note.txt")));
    }

    @Test
    void without_a_change_since_the_newest_no_backup_is_made_and_with_one_there_is() throws Exception {
        keep(1, 3);
        Backup.Made first = Backup.makeIfChanged(data, place, AT);
        assertEquals(first, Backup.makeIfChanged(data, place, AT.plusSeconds(1)));
        assertEquals(1, Backup.in(place).size());

        keep(4, 4);
        assertEquals(4, Backup.makeIfChanged(data, place, AT.plusSeconds(2)).records());
        open((record, writer) -> record.people().add(Map.of("p2", "Mathis")));
        Backup.makeIfChanged(data, place, AT.plusSeconds(3));
        assertEquals(3, Backup.in(place).size(), "another name is a change");

        Files.delete(Backup.in(place).get(2).resolve(Journal.FILE));
        Backup.makeIfChanged(data, place, AT.plusSeconds(4));
        assertEquals(4, Backup.in(place).size(), "a broken one is no reason to make none");
        Backup.makeIfChanged(data, place, AT.plusSeconds(5));
        assertEquals(4, Backup.in(place).size());
    }

    /** Killed after each step in turn: the folder is the old one, refuses, or is restored; never a fresh day. */
    @Test
    void killed_while_restoring_it_is_the_old_record_the_new_one_or_refuses_and_a_second_try_restores()
            throws Exception {
        keep(1, 5);
        Path backup = Backup.make(data, place, AT).folder();
        keep(6, 9);
        Path whole = copied("whole");
        int steps = Restoring.steps(backup, data, AT).size();
        int refused = 0;
        for (int killedAfter = 0; killedAfter <= steps; killedAfter++) {
            data = copied(whole, "killed-" + killedAfter);
            List<Restoring.Step> all = Restoring.steps(backup, data, AT.plusSeconds(7));
            for (int i = 0; i < killedAfter; i++) {
                all.get(i).run();
            }
            try {
                int there = notes();
                assertTrue(there == 9 || there == 5, there + " after step " + killedAfter);
            } catch (Damaged e) {
                refused++;
                assertFalse(Files.exists(data.resolve(Journal.FILE)), "nothing is made up after step " + killedAfter);
            }
            Restoring.restore(backup, data, AT.plusSeconds(99));
            assertEquals(5, notes(), "a second try after step " + killedAfter);
        }
        assertTrue(refused > 0, "in between it must have refused at least once");
    }

    private Path copied(String name) throws IOException {
        return copied(data, name);
    }

    private Path copied(Path from, String name) throws IOException {
        Path to = Files.createDirectory(root.resolve(name));
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
        return to;
    }
}
