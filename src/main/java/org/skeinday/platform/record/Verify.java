package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Ledger;
import org.skeinday.platform.db.OtherSchema;
import org.skeinday.platform.db.TableContents;
import org.skeinday.platform.db.UnusableDatabase;
import org.skeinday.platform.db.WritingTx;

/** Checks a record: the chain, that every line can be replayed, and that the database holds just that. */
public final class Verify {
    private final Projection projection;

    /** @param note in words, when there is something to know that is no damage; else empty */
    public record Whole(long records, String head, String note) {}

    public Verify(Projection projection) {
        this.projection = projection;
    }

    /**
     * Reads the folder and changes nothing in it but a missing lock file, and what H2 does to its own on closing.
     *
     * @throws Damaged naming the first record that is wrong, and how
     */
    public Whole check(Path folder) throws IOException {
        if (!Files.exists(folder.resolve(Journal.FILE))) {
            throw new Damaged("record 1: there is no " + Journal.FILE + " in " + folder);
        }
        try (FolderLock lock = FolderLock.take(folder)) {
            Format.refuseNewer(folder);
            JournalReader.check(folder.resolve(Journal.FILE)); // a broken chain before anything is built
            try (Database scratch = Database.scratch("verify" + System.identityHashCode(lock))) {
                return check(folder, scratch);
            }
        }
    }

    private Whole check(Path folder, Database scratch) throws IOException {
        Optional<Database> kept = openKept(folder);
        boolean same = false;
        try {
            Ledger.Position position = kept.map(Verify::position).orElse(new Ledger.Position(0, ""));
            String[] difference = {""};
            var replay = new Replay(projection, scratch);
            HeldBefore before = HeldBefore.of(folder);
            var people = new PeopleOfJournal();
            var comparing = new At(position.n(), line -> {
                replay.commit();
                difference[0] = compare(kept.orElseThrow(), scratch, line);
            });
            var end = JournalReader.read(
                    folder.resolve(Journal.FILE), new LinesTogether(before, people, replay, comparing));
            String erased = people(folder, people);
            if (position.n() > end.n()) {
                throw new Damaged("record " + (end.n() + 1) + ": the journal was cut; the database knows "
                        + position.n() + " records");
            }
            if (!difference[0].isEmpty()) {
                throw new Damaged("record " + position.n() + ": " + difference[0]);
            }
            same = kept.isPresent();
            return new Whole(end.n(), end.hash(), (note(kept.isPresent(), position, end) + " " + erased).strip());
        } finally {
            if (kept.isPresent() && kept.get().closeWhole() && same) {
                Seal.put(folder, Database.file(folder, ActStore.DATABASE)); // H2 writes to its file at every close
            }
        }
    }

    /** @return a note when a name that was erased is still there: a kill may leave it until the next start */
    private static String people(Path folder, PeopleOfJournal journal) throws IOException {
        People people = People.open(folder, FolderMark.read(folder).folder());
        people.refuseMissing(journal);
        return people.names().keySet().stream().anyMatch(journal.erased()::contains)
                ? "A name that was erased is still in " + People.FILE + "; the next start erases it again."
                : "";
    }

    /** Does something once everybody before it has heard one line. */
    private record At(long wanted, Consumer<JournalLine> then) implements JournalReader.Lines {
        @Override
        public boolean wants(long n, byte[] line) {
            return n == wanted;
        }

        @Override
        public void passed(long n, String hash) {}

        @Override
        public void line(JournalLine line) {
            if (line.n() == wanted) {
                then.accept(line);
            }
        }

        @Override
        public void end(long n) {}
    }

    private static Ledger.Position position(Database kept) {
        return readable(1, () -> kept.read(Ledger::position));
    }

    /** A damaged file makes H2 fail in many ways; all of them mean that. */
    private static <T> T readable(long n, Supplier<T> question) {
        try {
            return question.get();
        } catch (RuntimeException e) {
            throw new Damaged("record " + n + ": the database cannot be read (" + e.getMessage()
                    + "); the next start builds it anew from the journal");
        }
    }

    private static Optional<Database> openKept(Path folder) {
        if (!Files.exists(Database.file(folder, ActStore.DATABASE))) {
            return Optional.empty();
        }
        try {
            return Optional.of(Database.open(folder, ActStore.DATABASE));
        } catch (OtherSchema | UnusableDatabase e) {
            return Optional.empty();
        }
    }

    private static String compare(Database kept, Database scratch, JournalLine line) {
        WritingTx made = scratch.writing();
        if (!position(kept).hash().equals(line.hash())) {
            return "the database was made from another record";
        }
        return readable(
                line.n(),
                () -> kept.read(tx -> TableContents.difference(tx, made.tx())).orElse(""));
    }

    private static String note(boolean hasDatabase, Ledger.Position position, JournalReader.End end) {
        if (!hasDatabase) {
            return "There is no usable database; the next start builds it from the journal.";
        }
        if (end.torn() > 0) {
            return "The last line is torn; the next start cuts it and keeps a copy.";
        }
        return position.n() < end.n() ? "The database lags behind; the next start brings it up to date." : "";
    }

    /** Sets the database aside and builds it anew. */
    public Whole rebuild(Path folder, Clock clock) throws IOException {
        if (!Files.exists(folder.resolve(Journal.FILE))) {
            throw new Damaged("record 1: there is no " + Journal.FILE + " in " + folder);
        }
        try (FolderLock lock = FolderLock.take(folder)) {
            Format.refuseNewer(folder);
            LeftOpen.putBack(folder); // so that nothing is there that a start would go on from
            SealedCopy.removeAll(folder);
            Path file = Database.file(folder, ActStore.DATABASE);
            if (Files.exists(file)) {
                Files.move(file, file.resolveSibling(ActStore.DATABASE + "-set-aside-" + clock.millis() + ".mv.db"));
            }
        }
        try (ActStore record = ActStore.open(folder, projection, clock)) {
            return new Whole(record.journal().n(), record.journal().head(), "");
        }
    }
}
