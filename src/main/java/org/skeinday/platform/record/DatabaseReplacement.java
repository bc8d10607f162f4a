package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.Optional;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Ledger;
import org.skeinday.platform.db.OtherSchema;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Another database in place of one that cannot be used: from the sealed copy, or from the journal's first line on. */
final class DatabaseReplacement {
    static final Ledger.Position NOTHING = new Ledger.Position(0, "");

    private static final Logger LOG = LoggerFactory.getLogger(DatabaseReplacement.class);

    private final Path folder;
    private final Path file;
    private final Clock clock;
    private final Opening opening;

    /** Opens the journal with a database and brings the database up to it. */
    @FunctionalInterface
    interface Opening {
        /**
         * @param known how far a database knew the journal, which must not have become shorter
         * @param copied whether it is the sealed copy
         */
        void open(Database opened, Ledger.Position known, boolean copied) throws IOException;
    }

    DatabaseReplacement(Path folder, Clock clock, Opening opening) {
        this.folder = folder;
        this.file = Database.file(folder, ActStore.DATABASE);
        this.clock = clock;
        this.opening = opening;
    }

    /** Of a database that was not closed in good order only its position is used: that the journal must still have. */
    void replaceLeftOpen() throws IOException {
        Ledger.Position known = NOTHING;
        try (Database left = openDatabase()) {
            known = left.read(Ledger::position);
        } catch (RuntimeException e) {
            replace(e);
            return;
        }
        LOG.info("The database was not closed in good order; another is made of the journal");
        LeftOpen.moveAside(folder);
        try {
            goOnFromCopyOrBuildAnew(known);
        } catch (IOException | RuntimeException e) {
            LeftOpen.putBack(folder);
            throw e;
        }
        LeftOpen.remove(folder);
    }

    /** From the sealed copy, which lacks little; at any doubt in it from the first line. */
    private void goOnFromCopyOrBuildAnew(Ledger.Position known) throws IOException {
        try {
            Optional<SealedCopy> copy = SealedCopy.newest(folder);
            if (copy.isPresent() && copy.get().copyTo(file)) {
                opening.open(openDatabase(), known, true);
                LOG.info(
                        "It goes on from the copy that holds {} records",
                        copy.get().end().n());
                return;
            }
        } catch (Damaged e) {
            Files.deleteIfExists(file);
            throw e;
        } catch (IOException | RuntimeException e) {
            LOG.warn("The database's copy is of no use: {}", e.getMessage());
        }
        Files.deleteIfExists(file);
        buildAnew(known);
    }

    /** Of one of another schema, or that cannot be opened or does not take the lines it lacks. @param why it is not used */
    void replace(RuntimeException why) throws IOException {
        if (why instanceof OtherSchema) {
            backUpBeforeUpgrade();
        } else {
            LOG.warn("{}; the database is set aside and built anew from the journal", why.getMessage());
        }
        setAside();
        buildAnew(NOTHING);
    }

    private void backUpBeforeUpgrade() throws IOException {
        Backup.Made made = Backup.makeIfChanged(folder, folder.resolve(Backup.FOLDER), clock.instant());
        LOG.warn(
                "The database has another schema than this Skeinday makes. The record is backed up in {}, and the database"
                        + " built anew from it",
                made.folder().getFileName());
    }

    private void buildAnew(Ledger.Position known) throws IOException {
        try {
            opening.open(openDatabase(), known, false);
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(file); // half built, of no use to anyone
            throw e;
        }
    }

    private void setAside() throws IOException {
        if (Files.exists(file)) {
            Path aside = file.resolveSibling(ActStore.DATABASE + "-set-aside-" + clock.millis() + ".mv.db");
            Files.move(file, aside, StandardCopyOption.REPLACE_EXISTING);
            LOG.warn("The old database is kept as {}", aside.getFileName());
        }
    }

    private Database openDatabase() {
        return Database.open(folder, ActStore.DATABASE);
    }
}
