package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.DatabaseTrouble;
import org.skeinday.platform.db.Ledger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Journal and database of a folder, both open or both closed. The database is brought up to the journal; one that does
 * not fit, or was not closed in good order, is replaced ({@link DatabaseReplacement}).
 */
final class OpenFiles {
    private static final Logger LOG = LoggerFactory.getLogger(OpenFiles.class);

    private final Path folder;
    private final Path file;
    private final Projection projection;
    private final JournalFile.Opener opener;
    private final People people;
    private final CopyMaker copies;
    private final DatabaseReplacement replacement;
    private volatile @Nullable Database database;
    private volatile long heldBefore;
    private volatile @Nullable Journal journal;

    OpenFiles(Path folder, Projection projection, Clock clock, JournalFile.Opener opener, People people) {
        this.folder = folder;
        this.file = Database.file(folder, ActStore.DATABASE);
        this.projection = projection;
        this.opener = opener;
        this.people = people;
        this.copies = new CopyMaker(folder, projection);
        this.replacement = new DatabaseReplacement(folder, clock, this::openWith);
    }

    /**
     * At the start of the program.
     *
     * @throws Damaged when the journal is not whole, or lacks what the database that was left knew
     */
    void openFirst() throws IOException {
        LeftOpen.putBack(folder);
        if (Seal.broken(folder, file) && Files.exists(file)) {
            replacement.replaceLeftOpen();
        } else {
            reopen();
        }
        copyWhatWasBuilt();
    }

    /** What took long to build is copied before the day goes on: a database that is open cannot be. */
    private void copyWhatWasBuilt() throws IOException {
        if (!database().isFresh() || journal().n() < CopyMaker.LACKING) {
            return;
        }
        if (closeDatabase()) {
            copies.of(file, journal().end());
        }
        try {
            database = openDatabase();
        } catch (RuntimeException e) {
            close();
            throw e;
        }
    }

    /** Brings the database's sealed copy up to now, beside the writer: for a thread that may take its time. */
    void keepCopy() {
        Journal open = journal;
        if (open != null) {
            copies.upTo(open.end());
        }
    }

    /**
     * Closes and opens journal and database anew, as at the start. A database that cannot be opened, or that does not
     * take the lines it lacks, is set aside: after a full disk H2 may open a file whose next insert fails.
     */
    void reopen() throws IOException {
        close();
        try {
            openWith(openDatabase(), DatabaseReplacement.NOTHING, false);
        } catch (Damaged e) {
            throw e;
        } catch (RuntimeException e) {
            replacement.replace(e);
        }
    }

    private Database openDatabase() {
        return Database.open(folder, ActStore.DATABASE);
    }

    private void openWith(Database opened, Ledger.Position known, boolean copied) throws IOException {
        try {
            if (opened.isFresh()) {
                SealedCopy.removeAll(folder); // of what was here before, or no better than what is not used
            }
            var replay = new Replay(projection, opened, known, copied);
            var found = new PeopleOfJournal();
            journal = Journal.open(folder, opener, new LinesTogether(HeldBefore.of(folder), found, replay));
            heldBefore = replay.heldBefore();
            people.settle(found);
            database = opened;
            mark();
        } catch (IOException | RuntimeException e) {
            close();
            opened.close();
            throw e;
        }
    }

    /** Leaves word how far the journal has come: from here on it is never taken for a fresh or a shorter one. */
    void mark() throws IOException {
        JournalReader.End end = journal().end();
        FolderMark.read(folder).of(people.folder()).at(end.n(), end.hash()).write(folder);
    }

    /** Before it is closed for good. */
    void markAtTheEnd() {
        try {
            if (journal != null) {
                mark();
            }
        } catch (IOException e) {
            LOG.warn("How far the journal has come could not be noted: {}", e.getMessage());
        }
    }

    /** The last line that the database held before this journal was read to its end; 0 when it was built from the first. */
    long heldBefore() {
        return heldBefore;
    }

    /** Whether it is the one that is open now, and not one that is just being closed. */
    boolean isOpen(Database one) {
        return one == database;
    }

    Database database() {
        Database open = database;
        if (open == null) {
            throw new DatabaseTrouble("The record is being opened again");
        }
        return open;
    }

    Journal journal() {
        Journal open = journal;
        if (open == null) {
            throw new IllegalStateException("The journal is closed");
        }
        return open;
    }

    /** @return whether there was a database, and it closed in good order */
    boolean close() throws IOException {
        boolean whole = closeDatabase();
        Journal oldJournal = journal;
        journal = null;
        if (oldJournal != null) {
            oldJournal.close();
        }
        return whole;
    }

    private boolean closeDatabase() {
        Database old = database;
        database = null;
        return old != null && old.closeWhole();
    }

    /** In good order when the program ends: then the database is sealed, and copied where the copy lacks much. */
    void closeAndSeal() throws IOException {
        copies.stop();
        Journal open = journal;
        if (close() && open != null) {
            seal();
            copies.of(file, open.end());
        }
    }

    private void seal() {
        try {
            Seal.put(folder, file);
        } catch (IOException e) {
            LOG.warn("The database could not be sealed; the next start builds it anew: {}", e.getMessage());
        }
    }
}
