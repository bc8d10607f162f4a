package org.skeinday.platform.record;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.skeinday.platform.db.DatabaseTrouble;
import org.skeinday.platform.db.Ledger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one thread that owns the journal and the writing connection: decides waiting acts in batches, appends, forces,
 * commits, answers, and only then tells the pages.
 */
public final class Writer implements Acts, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Writer.class);
    private static final int BATCH = 64;
    private static final String AGAIN =
            "Skeinday cannot reach its record and tries again each second. What is entered waits on the device.";

    private final ActStore record;
    private final Batch batches;
    private final WriterSettings settings;
    private final BiConsumer<Set<String>, Long> publish;
    private final BlockingQueue<Pending> waiting = new LinkedBlockingQueue<>(4096);
    private final LastingThread thread = new LastingThread("writer", this::run);
    private volatile List<Pending> inHand = List.of();
    private final LeftBehind left = new LeftBehind();
    private final Progress progress = new Progress();
    private volatile boolean stopping;
    private volatile boolean behind;
    private volatile String trouble = "";

    /** An act and whoever waits for its answer. */
    record Pending(Act act, CompletableFuture<Answer> answer) {}

    private static final Duration EACH_SECOND = Duration.ofSeconds(1);
    private static final String BUSY = "Skeinday is busy or stopping. Send this again: it counts once.";

    private static final Answer OPENED_AGAIN =
            new Answer.NotYet("The record is being opened again. Send this again: it counts once.");

    /** Wakes the thread to see that it shall end; never written. */
    private static final Pending WAKE = new Pending(
            new Act("0".repeat(32), "writer.wake", "", "", Instant.EPOCH, Json.MAPPER.createObjectNode()),
            new CompletableFuture<>());

    public Writer(
            ActStore record,
            List<ActKind<?>> kinds,
            Clock clock,
            WriterSettings settings,
            BiConsumer<Set<String>, Long> publish) {
        this.record = record;
        this.batches = new Batch(record, new Deciding(kinds, clock), progress);
        this.settings = settings;
        this.publish = publish;
        LastingThread.readyToCatch(
                RuntimeException.class,
                Error.class,
                IOException.class,
                InterruptedException.class,
                Batch.NotAppended.class,
                Batch.MustReopen.class,
                DatabaseTrouble.class);
        thread.start();
    }

    /** Whoever brings an act sees to it that there is a writer; one that had to be started opens the record again first. */
    private void seeThatItRuns() {
        boolean hadEnded = !stopping
                && thread.revive(() -> {
                    behind = true;
                    answerAll(inHand, OPENED_AGAIN);
                });
        if (hadEnded) {
            LastingThread.sayOrNot(LOG, "The writer's thread had ended; another goes on", null);
        }
    }

    @Override
    public Answer submit(Act act) {
        return submit(act, Duration.ofMillis(settings.answerWithinMs()));
    }

    @Override
    public Answer submit(Act act, Duration within) {
        var pending = new Pending(act, new CompletableFuture<>());
        seeThatItRuns();
        if (stopping || !waiting.offer(pending)) {
            return new Answer.NotYet(BUSY);
        }
        Answer answer = answerOf(pending, within);
        if (!pending.answer().isDone()) {
            left.keep(act.id(), pending.answer());
        }
        return answer;
    }

    @Override
    public Answer await(Act act, Consumer<String> hears) {
        var pending = new Pending(act, new CompletableFuture<>());
        seeThatItRuns();
        if (stopping || !waiting.offer(pending)) {
            return new Answer.NotYet(BUSY);
        }
        int starts = thread.starts(); // an act that an ended thread had taken is not answered by the next one
        Answer answer = answerOf(pending, EACH_SECOND);
        while (!pending.answer().isDone()
                && starts == thread.starts()
                && !Thread.currentThread().isInterrupted()) {
            hears.accept(progress.words());
            seeThatItRuns();
            answer = answerOf(pending, EACH_SECOND);
        }
        return pending.answer().getNow(answer);
    }

    @Override
    public Optional<Answer> told(String act) {
        Optional<Answer> known = left.find(act)
                .map(found -> found.getNow(new Answer.NotYet(progress.words())))
                .filter(answer -> !(answer instanceof Answer.NotYet) || !left.isDone(act));
        return known.isPresent()
                ? known
                : record.read(tx -> Ledger.known(tx, act)).map(line -> new Answer.Saved(line.n(), act));
    }

    private Answer answerOf(Pending pending, Duration within) {
        try {
            return pending.answer().get(within.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            return new Answer.NotYet(
                    ("It still waits to be written. " + progress.words()).strip() + " Send it again: it counts once.");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return new Answer.NotYet("Skeinday stopped while this waited. Send it again: it counts once.");
        } catch (ExecutionException e) {
            throw new IllegalStateException("The writer always answers", e);
        }
    }

    /** What keeps acts from being taken, in words for every page; empty when all is well. */
    public String trouble() {
        return trouble;
    }

    private void run() {
        boolean more = true;
        while (more) {
            try {
                more = round();
            } catch (RuntimeException | Error e) { // without this thread nothing would ever be taken again
                behind = true;
                LastingThread.sayOrNot(LOG, "The writer met a fault of the program and goes on", e);
            }
        }
    }

    /** @return whether there is more to come */
    private boolean round() {
        List<Pending> batch = next();
        if (batch.isEmpty() && stopping) {
            return false;
        }
        if (behind || record.isTroubled()) {
            behind = true;
            reopen();
        }
        if (!batch.isEmpty()) {
            write(batch);
        }
        return true;
    }

    private List<Pending> next() {
        List<Pending> batch = new ArrayList<>(BATCH);
        try {
            Pending first = waiting.poll(settings.reopenEveryMs(), TimeUnit.MILLISECONDS);
            if (first != null) {
                batch.add(first);
                waiting.drainTo(batch, BATCH - 1);
            }
        } catch (InterruptedException e) {
            // Nobody may interrupt the writer: an interrupt would close the database's file under it.
            LOG.warn("The writer was interrupted and goes on");
        }
        batch.remove(WAKE);
        inHand = batch;
        return batch;
    }

    private void write(List<Pending> batch) {
        if (behind) {
            answerAll(batch, OPENED_AGAIN);
            return;
        }
        if (tooFull()) {
            diskFull(batch);
            return;
        }
        try {
            Batch.Outcome outcome = batches.write(batch);
            trouble = ""; // before the answers: who has one must not see the old words any more, nor an old page
            if (!outcome.topics().isEmpty()) {
                publish.accept(outcome.topics(), outcome.n());
            }
            outcome.answers().forEach((pending, answer) -> pending.answer().complete(answer));
        } catch (Batch.NotAppended e) {
            LOG.warn("The journal could not be written: {}", e.getMessage());
            diskFull(batch);
        } catch (Batch.MustReopen | DatabaseTrouble e) {
            LOG.error("The record must be opened again", e);
            behind = true;
            trouble = AGAIN;
            answerAll(batch, OPENED_AGAIN);
        } catch (RuntimeException | Error e) { // out of memory too: the thread must outlive what one batch has met
            behind = true;
            trouble = AGAIN;
            answerAll(batch, OPENED_AGAIN);
            LastingThread.sayOrNot(LOG, "The writer met a fault of the program", e);
        }
    }

    private boolean tooFull() {
        try {
            return java.nio.file.Files.getFileStore(record.folder()).getUsableSpace() < settings.keepFreeBytes();
        } catch (IOException e) {
            return true;
        }
    }

    private void diskFull(List<Pending> batch) {
        trouble = "The laptop's disk is nearly full: nothing more is taken until there is space. Reading goes on.";
        answerAll(batch, new Answer.DiskFull(trouble));
    }

    private static void answerAll(List<Pending> batch, Answer answer) {
        batch.forEach(pending -> pending.answer().complete(answer));
    }

    private void reopen() {
        try {
            record.reopen();
            behind = false;
            trouble = "";
            LOG.info("The record is open again");
        } catch (IOException | RuntimeException | Error e) {
            LOG.warn("The record could not be opened again yet: {}", e.getMessage());
        }
    }

    /** Takes no more, writes what waits, and ends the thread. */
    @Override
    public void close() {
        stopping = true;
        waiting.offer(WAKE); // a full queue wakes it as well
        try {
            thread.join(5_000, () -> !progress.words().isEmpty()); // a large act is written whole
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
