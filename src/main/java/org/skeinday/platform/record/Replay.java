package org.skeinday.platform.record;

import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Ledger;
import org.skeinday.platform.db.WritingTx;

/** Brings a database up to the journal's end, checking on the way that it belongs to this journal. */
final class Replay {
    private static final int LINES_PER_COMMIT = 1000;

    private final Projection projection;
    private final WritingTx writing;
    private final Ledger.Position position;
    private final boolean fresh;
    private long seen;
    private String head = "";
    private boolean applied;

    /** A database that has lines already does not take the next: it is the database's fault, not the journal's. */
    static final class NotTaken extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NotTaken(String message, @Nullable Throwable cause) {
            super(message, cause);
        }
    }

    Replay(Projection projection, Database database) {
        this.projection = projection;
        this.fresh = database.isFresh();
        this.writing = database.writing();
        this.position = Ledger.position(writing.tx());
    }

    void line(JournalLine line) {
        seen = line.n();
        head = line.hash();
        if (line.n() == position.n() && !line.hash().equals(position.hash())) {
            throw new Damaged("record " + line.n() + ": the database was made from another record");
        }
        if (line.n() <= position.n()) {
            return;
        }
        refuseLeftovers();
        try {
            projection.apply(writing.tx(), line);
        } catch (Projection.Newer e) {
            throw new Damaged(String.valueOf(e.getMessage()));
        } catch (RuntimeException e) {
            String what = "record " + line.n() + ": it cannot be put into the database: " + e.getMessage();
            throw fresh ? new Damaged(what) : new NotTaken(what, e);
        }
        applied = true;
        if (line.n() % LINES_PER_COMMIT == 0) {
            commit();
        }
    }

    /** Keeps what has been applied so far. */
    void commit() {
        if (applied) {
            Ledger.standAt(writing.tx(), seen, head);
            applied = false;
        }
        writing.commit();
    }

    /**
     * A file that was there before and holds no line was killed while it was being built: H2 has been seen to keep rows
     * of the transaction that never ended, so nothing is put beside them.
     */
    private void refuseLeftovers() {
        if (!fresh && position.n() == 0) {
            throw new NotTaken("The database was never built to its end", null);
        }
    }

    void end() {
        if (position.n() > seen) {
            throw new Damaged("record " + (seen + 1) + ": the journal was cut; the database knows " + position.n()
                    + " records, the journal has " + seen);
        }
        commit();
    }
}
