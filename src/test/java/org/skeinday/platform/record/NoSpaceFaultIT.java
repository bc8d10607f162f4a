package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.fault.SmallDisk;

/** The disk really runs out of space: in the middle of a line, or when the database writes. */
@Timeout(120)
class NoSpaceFaultIT {
    @TempDir
    Path root;

    @Test
    void what_was_answered_before_during_and_after_a_full_disk_is_there_and_nothing_else() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(root.resolve("disk"), 12)) {
            Path folder = disk.folder().resolve("day");
            List<String> saved = new ArrayList<>();
            try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                    Writer writer = new Writer(
                            record,
                            List.of(NoteKind.ACT),
                            Clock.systemUTC(),
                            new WriterSettings(5_000, 50, 0),
                            (topics, n) -> {})) {
                for (int wave = 0; wave < 4; wave++) {
                    disk.leave(200_000 + wave * 4096L);
                    Act refused = fill(writer, wave, saved);
                    disk.giveBack();
                    sendAgain(writer, refused, saved);
                    sendAgain(writer, NoteKind.act(9_000_000 + wave, "space again " + wave), saved);
                }
                assertFalse(saved.size() < 100, "much was saved before");
                assertEquals(saved.size(), NoteKind.texts(record).size());
            }
            Verify.Whole whole = new Verify(NoteKind.projection()).check(folder);
            assertEquals(saved.size(), whole.records());
            try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC())) {
                assertEquals(
                        saved.stream().sorted().toList(),
                        NoteKind.texts(record).stream().sorted().toList());
            }
        }
    }

    /** Writes until the disk takes no more. @return the act that was not answered as saved */
    private static Act fill(Writer writer, int wave, List<String> saved) {
        for (int i = 0; i < 100_000; i++) {
            Act act = NoteKind.act(wave * 1_000_000 + i + 1, "wave " + wave + " note " + i + " " + "x".repeat(300));
            if (!(writer.submit(act) instanceof Answer.Saved)) {
                return act;
            }
            saved.add(textOf(act));
        }
        throw new AssertionError("The small disk never was full");
    }

    /** As a device does until it is told "saved": the act may have happened already, and then counts once. */
    private static void sendAgain(Writer writer, Act act, List<String> saved) throws InterruptedException {
        Answer answer = writer.submit(act);
        for (int i = 0; i < 200 && !(answer instanceof Answer.Saved); i++) {
            Thread.sleep(50);
            answer = writer.submit(act);
        }
        assertInstanceOf(Answer.Saved.class, answer);
        saved.add(textOf(act));
    }

    private static String textOf(Act act) {
        return act.content().path("text").asText();
    }
}
