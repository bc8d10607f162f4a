package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Ledger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps the folder's {@link SealedCopy} near the record. It is made of the journal, as everything is, beside the writer,
 * which is not held for a moment; a copy of the open file would have to hold it, and may carry rows of a transaction that
 * never ended.
 */
final class CopyMaker {
    /** Acts that a start puts into the database in a quarter of a second: for fewer there is no new copy. */
    static final long LACKING = 1000;

    private static final Logger LOG = LoggerFactory.getLogger(CopyMaker.class);
    private static final String BEING_MADE = "copy-being-made";
    private static final long LEFT_FREE = 256L << 20;

    private final Path folder;
    private final Projection projection;
    private final long lacking;
    private volatile boolean stopping;

    /** The program ends: a copy is not worth waiting for. */
    private static final class Stopped extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    CopyMaker(Path folder, Projection projection) {
        this(folder, projection, LACKING);
    }

    /** @param lacking a copy that lacks fewer lines than these is near enough */
    CopyMaker(Path folder, Projection projection, long lacking) {
        this.folder = folder;
        this.projection = projection;
        this.lacking = lacking;
    }

    /** Whoever makes one gives up soon. */
    void stop() {
        stopping = true;
    }

    /**
     * Brings the copy up to this line of the journal. Where that cannot be done the one before stays: without any, a
     * start after a kill builds everything anew.
     */
    synchronized void upTo(JournalReader.End end) {
        make(end, file -> {
            JournalReader.End start = startOn(file);
            Database database = Database.open(folder, BEING_MADE);
            boolean whole;
            try {
                goOn(database, start, end);
            } finally {
                whole = database.closeWhole();
            }
            return whole;
        });
    }

    private void goOn(Database database, JournalReader.End start, JournalReader.End end) throws IOException {
        var replay = new Replay(projection, database, new Ledger.Position(0, ""), true);
        if (replay.heldBefore() != start.n()) {
            throw new Replay.NotTaken("the copy does not hold what its seal says", null);
        }
        JournalReader.read(folder.resolve(Journal.FILE), start, end.length(), untilStopped(replay));
    }

    /** Takes a database that has just been closed in good order and holds what the journal does. */
    synchronized void of(Path closed, JournalReader.End end) {
        make(end, file -> {
            Files.copy(closed, file);
            return true;
        });
    }

    private interface Making {
        /** @return whether the file was closed in good order */
        boolean into(Path file) throws IOException;
    }

    private void make(JournalReader.End end, Making making) {
        Path file = Database.file(folder, BEING_MADE);
        try {
            Files.deleteIfExists(file); // of a program that was killed
            if (isNear(end) || !hasSpace()) {
                return;
            }
            if (making.into(file)) {
                SealedCopy.take(folder, file, end);
                LOG.info("The database's copy holds {} records", end.n());
            }
        } catch (Stopped e) {
            LOG.info("The program ends; the database's copy stays the one before");
        } catch (IOException | RuntimeException e) { // Damaged too: whatever it was, the next hour tries again
            LOG.warn("No new copy of the database could be made: {}", e.getMessage());
        } finally {
            removed(file);
        }
    }

    private static void removed(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            LOG.warn("{} could not be removed: {}", file.getFileName(), e.getMessage());
        }
    }

    private boolean isNear(JournalReader.End end) throws IOException {
        Optional<SealedCopy> newest = SealedCopy.newest(folder);
        return end.n() - newest.map(copy -> copy.end().n()).orElse(0L) < lacking;
    }

    /** Not at the price of the space that acts need. */
    private boolean hasSpace() throws IOException {
        Path database = Database.file(folder, ActStore.DATABASE);
        long size = Files.exists(database) ? Files.size(database) : 0;
        return Files.getFileStore(folder).getUsableSpace() > 2 * size + LEFT_FREE;
    }

    private JournalReader.End startOn(Path file) throws IOException {
        Optional<SealedCopy> newest = SealedCopy.newest(folder);
        if (newest.isPresent() && newest.get().copyTo(file)) {
            return newest.get().end();
        }
        Files.deleteIfExists(file);
        return JournalReader.End.NOTHING;
    }

    private JournalReader.Lines untilStopped(Replay replay) {
        return new JournalReader.Lines() {
            @Override
            public boolean wants(long n, byte[] line) {
                return replay.wants(n, line);
            }

            @Override
            public void passed(long n, String hash) {
                replay.passed(n, hash);
            }

            @Override
            public void line(JournalLine line) {
                if (stopping) {
                    throw new Stopped();
                }
                replay.line(line);
            }

            @Override
            public void end(long n) {
                replay.end(n);
            }
        };
    }
}
