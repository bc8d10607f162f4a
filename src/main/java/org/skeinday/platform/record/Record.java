package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.DatabaseTrouble;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.UnusableDatabase;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A data folder, opened: its lock, its journal, its database brought up to date, its people. */
public final class Record implements AutoCloseable {
    public static final String DATABASE = "skeinday";
    private static final Logger LOG = LoggerFactory.getLogger(Record.class);
    private static final String MARKER = "skeinday-folder.txt";

    private final Path folder;
    private final Projection projection;
    private final Clock clock;
    private final JournalFile.Opener opener;
    private final FolderLock lock;
    private final People people;
    private volatile boolean troubled;
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
        Files.createDirectories(folder);
        FolderLock lock = FolderLock.take(folder);
        try {
            refuseWithoutJournal(folder);
            var record = new Record(folder, projection, clock, opener, lock, People.open(folder));
            record.reopen();
            mark(folder);
            return record;
        } catch (IOException | RuntimeException e) {
            lock.close();
            throw e;
        }
    }

    /** Leaves word that this folder is in use: without its journal it is never taken for a fresh one. */
    static void mark(Path folder) throws IOException {
        Files.writeString(
                folder.resolve(MARKER), "Skeinday's data. journal.jsonl and people.json are the record: keep them.\n");
    }

    private static void refuseWithoutJournal(Path folder) {
        boolean used = Files.exists(folder.resolve(MARKER)) || Files.exists(Database.file(folder, DATABASE));
        if (used && !Files.exists(folder.resolve(Journal.FILE))) {
            throw new Damaged("record 1: " + folder + " was in use, but its " + Journal.FILE
                    + " is missing. Put it back from a backup, or name another folder with --data.");
        }
    }

    /**
     * Closes and opens journal and database anew, as at the start. A database that cannot be opened, or that does not
     * take the lines it lacks, is set aside: after a full disk H2 may open a file whose next insert fails.
     */
    void reopen() throws IOException {
        closeFiles();
        troubled = false;
        try {
            openWith(openDatabase());
        } catch (UnusableDatabase | DatabaseTrouble | Replay.NotTaken e) {
            LOG.warn("{}; the database is set aside and built anew from the journal", e.getMessage());
            setAside();
            buildAnew();
        }
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
            journal = Journal.open(folder, opener, replay::line);
            replay.end();
            database = opened;
            people.erase(opened.read(Erasing::all));
        } catch (IOException | RuntimeException e) {
            closeFiles();
            opened.close();
            throw e;
        }
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
        try {
            return database().read(question);
        } catch (DatabaseTrouble e) {
            troubled = true;
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

    private void closeFiles() throws IOException {
        Journal oldJournal = journal;
        journal = null;
        if (oldJournal != null) {
            oldJournal.close();
        }
        Database oldDatabase = database;
        database = null;
        if (oldDatabase != null) {
            oldDatabase.close();
        }
    }

    @Override
    public void close() throws IOException {
        closeFiles();
        lock.close();
    }
}
