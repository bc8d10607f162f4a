package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Set;
import java.util.function.Function;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.DatabaseTrouble;
import org.skeinday.platform.db.Tx;

/** A data folder, opened: its lock, its journal, its database brought up to date, its people. */
public final class ActStore implements AutoCloseable {
    public static final String DATABASE = "skeinday";

    private final Path folder;
    private final Projection projection;
    private final FolderLock lock;
    private final People people;
    private final OpenFiles files;
    private volatile boolean troubled;
    private volatile boolean sealable;

    private ActStore(
            Path folder,
            Projection projection,
            Clock clock,
            JournalFile.Opener opener,
            FolderLock lock,
            People people) {
        this.folder = folder;
        this.projection = projection;
        this.lock = lock;
        this.people = people;
        this.files = new OpenFiles(folder, projection, clock, opener, people);
    }

    /**
     * Opens a data folder, making it when it is new.
     *
     * @throws AlreadyRunning when another program holds it
     * @throws Damaged when the record in it is not whole
     * @throws IOException when the disk or its permissions do not allow it
     */
    public static ActStore open(Path folder, Projection projection, Clock clock) throws IOException {
        return open(folder, projection, clock, JournalFile::onDisk);
    }

    /** @throws AlreadyRunning when a program works on this folder */
    public static void refuseWhileRunning(Path folder) throws IOException {
        FolderLock.take(folder).close();
    }

    static ActStore open(Path folder, Projection projection, Clock clock, JournalFile.Opener opener)
            throws IOException {
        try {
            return opened(folder, projection, clock, opener, Set.of());
        } catch (FileSystemException e) {
            throw new IOException( // its own message is no more than the path
                    "The data folder " + folder + " cannot be used: " + why(e)
                            + ". Choose another with --data, or ask for the right to write there.",
                    e);
        }
    }

    /**
     * The same, though these people have no name: whoever opens it so records them as erased.
     *
     * @param nameless ids of people
     */
    static ActStore openWithout(Path folder, Projection projection, Clock clock, Set<String> nameless)
            throws IOException {
        return opened(folder, projection, clock, JournalFile::onDisk, nameless);
    }

    private static String why(FileSystemException e) {
        String reason = e instanceof AccessDeniedException ? "not allowed" : e.getReason();
        return e.getFile() + ": " + (reason == null ? e.getClass().getSimpleName() : reason);
    }

    private static ActStore opened(
            Path folder, Projection projection, Clock clock, JournalFile.Opener opener, Set<String> nameless)
            throws IOException {
        OwnerOnly.makeFolder(folder);
        FolderLock lock = FolderLock.take(folder);
        try {
            Format.refuseNewer(folder);
            OwnerOnly.noteOthers(folder);
            OwnerOnly.tightenAll(folder);
            WholeFile.dropLeft(folder);
            Files.deleteIfExists(folder.resolve(DATABASE + ".trace.db")); // of older programs, with names in it
            FolderMark.refuseWithoutJournal(folder);
            Journal.make(folder);
            FolderMark mark = FolderMark.read(folder);
            People people = People.open(folder, mark.folder());
            people.goWithout(nameless);
            var record = new ActStore(folder, projection, clock, opener, lock, people);
            record.files.openFirst();
            record.sealable = true;
            Format.keep(folder);
            return record;
        } catch (IOException | RuntimeException e) {
            lock.close();
            throw e;
        }
    }

    /** As {@link OpenFiles#mark}. */
    void mark() throws IOException {
        files.mark();
    }

    /** Brings the database's sealed copy up to now, beside the writer: for a thread that may take its time. */
    public void keepCopy() {
        files.keepCopy();
    }

    /** As {@link OpenFiles#reopen}. What H2 went through is not known: it is not sealed, and the next start replaces it. */
    void reopen() throws IOException {
        troubled = false;
        sealable = false;
        files.reopen();
    }

    /** As {@link OpenFiles#heldBefore}. */
    long heldBefore() {
        return files.heldBefore();
    }

    Database database() {
        return files.database();
    }

    Journal journal() {
        return files.journal();
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
            if (files.isOpen(open)) { // else it would be opened again and again
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

    @Override
    public void close() throws IOException {
        try {
            files.markAtTheEnd();
            if (sealable && !troubled) {
                files.closeAndSeal();
            } else {
                files.close();
            }
        } finally {
            lock.close();
        }
    }
}
