package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.DatabaseTrouble;
import org.skeinday.platform.db.OtherSchema;
import org.skeinday.platform.db.Tx;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A data folder, opened: its lock, its journal, its database brought up to date, its people. */
public final class Record implements AutoCloseable {
    public static final String DATABASE = "skeinday";
    private static final Logger LOG = LoggerFactory.getLogger(Record.class);

    private final Path folder;
    private final Projection projection;
    private final Clock clock;
    private final JournalFile.Opener opener;
    private final FolderLock lock;
    private final People people;
    private volatile boolean troubled;
    private volatile boolean sealable;
    private volatile @Nullable Database database;
    private @Nullable Journal journal;

    private Record(
            Path folder,
            Projection projection,
            Clock clock,
            JournalFile.Opener opener,
            FolderLock lock,
            People people) {
        this.folder = folder;
        this.projection = projection;
        this.clock = clock;
        this.opener = opener;
        this.lock = lock;
        this.people = people;
    }

    /**
     * Opens a data folder, making it when it is new.
     *
     * @throws AlreadyRunning when another program holds it
     * @throws Damaged when the record in it is not whole
     * @throws IOException when the disk or its permissions do not allow it
     */
    public static Record open(Path folder, Projection projection, Clock clock) throws IOException {
        return open(folder, projection, clock, JournalFile::onDisk);
    }

    /** @throws AlreadyRunning when a program works on this folder */
    public static void refuseWhileRunning(Path folder) throws IOException {
        FolderLock.take(folder).close();
    }

    static Record open(Path folder, Projection projection, Clock clock, JournalFile.Opener opener) throws IOException {
        try {
            return opened(folder, projection, clock, opener);
        } catch (FileSystemException e) { // its own message is no more than the path
            throw new IOException(
                    "The data folder " + folder + " cannot be used: " + why(e)
                            + ". Choose another with --data, or ask for the right to write there.",
                    e);
        }
    }

    private static String why(FileSystemException e) {
        String reason = e instanceof AccessDeniedException ? "not allowed" : e.getReason();
        return e.getFile() + ": " + (reason == null ? e.getClass().getSimpleName() : reason);
    }

    private static Record opened(Path folder, Projection projection, Clock clock, JournalFile.Opener opener)
            throws IOException {
        OwnerOnly.makeFolder(folder);
        FolderLock lock = FolderLock.take(folder);
        try {
            Format.refuseNewer(folder);
            OwnerOnly.tightenAll(folder);
            WholeFile.dropLeft(folder);
            Files.deleteIfExists(folder.resolve(DATABASE + ".trace.db")); // of older programs, with names in it
            refuseWithoutJournal(folder);
            Journal.make(folder);
            FolderMark mark = FolderMark.read(folder);
            var record = new Record(folder, projection, clock, opener, lock, People.open(folder, mark.folder()));
            record.firstOpen();
            Format.keep(folder);
            return record;
        } catch (IOException | RuntimeException e) {
            lock.close();
            throw e;
        }
    }

    /** Leaves word how far the journal has come: from here on it is never taken for a fresh or a shorter one. */
    void mark() throws IOException {
        FolderMark.read(folder)
                .of(people.folder())
                .at(journal().n(), journal().head())
                .write(folder);
    }

    private static void refuseWithoutJournal(Path folder) {
        boolean used = Files.exists(folder.resolve(FolderMark.FILE)) || Files.exists(Database.file(folder, DATABASE));
        if (used && !Files.exists(folder.resolve(Journal.FILE))) {
            throw new Damaged("record 1: " + folder + " was in use, but its " + Journal.FILE
                    + " is missing. Put it back from a backup, or name another folder with --data.");
        }
    }

    /**
     * As {@link #reopen}, and a database that was not closed in good order is built anew, once it has shown that it
     * belongs to this journal.
     */
    private void firstOpen() throws IOException {
        Path file = Database.file(folder, DATABASE);
        boolean broken = Seal.broken(folder, file);
        reopen();
        if (broken && !database().isFresh()) {
            LOG.info("The database was not closed in good order; it is built anew from the journal");
            closeFiles();
            Files.delete(file);
            buildAnew();
        }
        sealable = true;
    }

    /**
     * Closes and opens journal and database anew, as at the start. A database that cannot be opened, or that does not
     * take the lines it lacks, is set aside: after a full disk H2 may open a file whose next insert fails.
     */
    void reopen() throws IOException {
        closeFiles();
        troubled = false;
        sealable = false; // what H2 went through is not known: the next start builds it anew
        try {
            openWith(openDatabase());
        } catch (OtherSchema e) {
            backUpBeforeUpgrade();
            setAside();
            buildAnew();
        } catch (Damaged e) {
            throw e;
        } catch (RuntimeException e) {
            LOG.warn("{}; the database is set aside and built anew from the journal", e.getMessage());
            setAside();
            buildAnew();
        }
    }

    private void backUpBeforeUpgrade() throws IOException {
        Backup.Made made = Backup.makeIfChanged(folder, folder.resolve(Backup.FOLDER), clock.instant());
        LOG.warn(
                "The database has another schema than this Skeinday makes. The record is backed up in {}, and the database"
                        + " built anew from it",
                made.folder().getFileName());
    }

    private void buildAnew() throws IOException {
        try {
            openWith(openDatabase());
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(Database.file(folder, DATABASE)); // half built, of no use to anyone
            throw e;
        }
    }

    private Database openDatabase() {
        return Database.open(folder, DATABASE);
    }

    private void openWith(Database opened) throws IOException {
        try {
            var replay = new Replay(projection, opened);
            var found = new PeopleOfJournal();
            journal = Journal.open(folder, opener, watch(replay, found));
            replay.end();
            people.settle(found);
            database = opened;
            mark();
        } catch (IOException | RuntimeException e) {
            closeFiles();
            opened.close();
            throw e;
        }
    }

    private Journal.Watch watch(Replay replay, PeopleOfJournal found) throws IOException {
        HeldBefore before = HeldBefore.of(folder);
        return new Journal.Watch() {
            @Override
            public void line(JournalLine line) {
                before.line(line);
                found.line(line);
                replay.line(line);
            }

            @Override
            public void end(long n) throws IOException {
                before.end(n);
            }
        };
    }

    private void setAside() throws IOException {
        Path file = Database.file(folder, DATABASE);
        if (Files.exists(file)) {
            Path aside = file.resolveSibling(DATABASE + "-set-aside-" + clock.millis() + ".mv.db");
            Files.move(file, aside, StandardCopyOption.REPLACE_EXISTING);
            LOG.warn("The old database is kept as {}", aside.getFileName());
        }
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

    /** Answers what {@code question} reads, in one snapshot. */
    public <T> T read(Function<Tx, T> question) {
        if (troubled) { // H2 opens a file anew for whoever asks next, and shows what it held before the last commits
            throw new DatabaseTrouble("The record is being opened again");
        }
        Database open = database();
        try {
            return open.read(question);
        } catch (DatabaseTrouble e) {
            if (open == database) { // not of one that is just being closed: that would have it opened again and again
                troubled = true;
            }
            throw e;
        }
    }

    /** Whether a reader met a database that failed: the writer then opens it again. */
    boolean isTroubled() {
        return troubled;
    }

    public People people() {
        return people;
    }

    public Path folder() {
        return folder;
    }

    /** Leaves word for a second start in this folder. */
    public void runningAt(String where) throws IOException {
        lock.runningAt(where);
    }

    Projection projection() {
        return projection;
    }

    /** @return whether there was a database, and it closed in good order */
    private boolean closeFiles() throws IOException {
        Database oldDatabase = database;
        database = null;
        boolean whole = oldDatabase != null && oldDatabase.closeWhole();
        Journal oldJournal = journal;
        journal = null;
        if (oldJournal != null) {
            oldJournal.close();
        }
        return whole;
    }

    @Override
    public void close() throws IOException {
        try {
            markAtTheEnd();
            if (closeFiles() && sealable && !troubled) {
                seal();
            }
        } finally {
            lock.close();
        }
    }

    private void markAtTheEnd() {
        try {
            if (journal != null) {
                mark();
            }
        } catch (IOException e) {
            LOG.warn("How far the journal has come could not be noted: {}", e.getMessage());
        }
    }

    private void seal() {
        try {
            Seal.put(folder, Database.file(folder, DATABASE));
        } catch (IOException e) {
            LOG.warn("The database could not be sealed; the next start builds it anew: {}", e.getMessage());
        }
    }
}
