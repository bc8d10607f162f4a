package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Who waits for an act that takes long, and who leaves before it is written. */
@Timeout(60)
class WaitingTest {
    private static final WriterSettings SHORT = new WriterSettings(50, 100, 0);

    @TempDir
    Path folder;

    private final CountDownLatch goOn = new CountDownLatch(1);

    /** As long as somebody lets it wait. */
    private ActKind<NoteKind.Note> slow() {
        return new ActKind<>("note.slow", NoteKind.Note.class, (tx, context, note) -> {
            try {
                goOn.await();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            return NoteKind.ACT.action().decide(tx, context, note);
        });
    }

    private Writer writer(ActStore record) {
        return new Writer(record, List.of(slow()), Clock.systemUTC(), SHORT, (topics, n) -> {});
    }

    private static Act act(int k) {
        Act note = NoteKind.act(k, "long");
        return new Act(note.id(), "note.slow", note.device(), note.person(), note.deviceTime(), note.content());
    }

    @Test
    void the_result_of_an_act_whose_waiter_left_is_asked_for_by_its_id() throws Exception {
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer = writer(record)) {
            assertInstanceOf(Answer.NotYet.class, writer.submit(act(1), Duration.ofMillis(20)));
            assertInstanceOf(Answer.NotYet.class, writer.told(act(1).id()).orElseThrow());
            assertEquals(Optional.empty(), writer.told("f".repeat(32)), "nothing of it is on its way");
            goOn.countDown();
            Answer told = writer.told(act(1).id()).orElseThrow();
            for (int i = 0; i < 200 && told instanceof Answer.NotYet; i++) {
                Thread.sleep(20);
                told = writer.told(act(1).id()).orElseThrow();
            }
            assertInstanceOf(Answer.Saved.class, told);
        }
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer = writer(record)) {
            assertInstanceOf(Answer.Saved.class, writer.told(act(1).id()).orElseThrow(), "after a new start too");
        }
    }

    @Test
    void who_waits_as_long_as_it_takes_hears_how_far_it_has_come() throws Exception {
        List<String> heard = new ArrayList<>();
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer = writer(record)) {
            Answer answer = writer.await(act(2), words -> {
                heard.add(words);
                goOn.countDown();
            });
            assertInstanceOf(Answer.Saved.class, answer);
        }
        assertFalse(heard.isEmpty());
        assertTrue(heard.get(0).contains("looked through"), heard.toString());
    }

    /** Neither an exception of the program nor an error: past every handler that the writer has. */
    private static final class Gone extends Throwable {
        private static final long serialVersionUID = 1L;
    }

    @SuppressWarnings("unchecked") // the compiler is kept from seeing what is thrown, as it is where memory runs out
    private static <T extends Throwable> void end(Throwable why) throws T {
        throw (T) why;
    }

    /** Ends the writer's thread at the first act, after it stands in the record and before anybody is told. */
    private Writer ending(ActStore record, AtomicInteger ended) {
        return new Writer(record, List.of(NoteKind.ACT), Clock.systemUTC(), SHORT, (topics, n) -> {
            if (ended.getAndIncrement() == 0) {
                WaitingTest.<RuntimeException>end(new Gone());
            }
        });
    }

    @Test
    void a_writer_whose_thread_has_ended_past_its_handlers_is_followed_by_another() throws Exception {
        AtomicInteger ended = new AtomicInteger();
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer = ending(record, ended)) {
            Answer lost = writer.submit(NoteKind.act(1, "first"));
            assertInstanceOf(Answer.NotYet.class, lost);
            assertEquals(1, saved(writer, NoteKind.act(1, "first")).n(), "it stood in the record and counts once");
            assertEquals(2, saved(writer, NoteKind.act(2, "second")).n());
        }
    }

    @Test
    void who_waits_as_long_as_it_takes_does_not_wait_for_a_thread_that_has_ended() throws Exception {
        AtomicInteger ended = new AtomicInteger();
        try (ActStore record = ActStore.open(folder, NoteKind.projection(), Clock.systemUTC());
                Writer writer = ending(record, ended)) {
            assertInstanceOf(Answer.NotYet.class, writer.await(NoteKind.act(1, "first"), words -> {}));
            assertEquals(1, saved(writer, NoteKind.act(1, "first")).n());
        }
    }

    /** Sent again until it is saved, as a device does. */
    private static Answer.Saved saved(Writer writer, Act act) throws InterruptedException {
        Answer answer = writer.submit(act);
        for (int i = 0; i < 200 && !(answer instanceof Answer.Saved); i++) {
            Thread.sleep(20);
            answer = writer.submit(act);
        }
        return assertInstanceOf(Answer.Saved.class, answer);
    }
}
