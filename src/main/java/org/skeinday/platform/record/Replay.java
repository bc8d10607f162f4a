package org.skeinday.platform.record;

import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Ledger;
import org.skeinday.platform.db.WritingTx;

/** Brings a database up to the journal's end, checking on the way that it belongs to this journal. */
final class Replay implements JournalReader.Lines {
    private static final int LINES_PER_COMMIT = 1000;
    private static final Ledger.Position NOTHING = new Ledger.Position(0, "");

    private final Projection projection;
    private final WritingTx writing;
    private final Ledger.Position position;
    private final Ledger.Position known;
    private final boolean copied;
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

    /** Onto a database that is this folder's own: where it does not fit, the journal was changed. */
    Replay(Projection projection, Database database) {
        this(projection, database, NOTHING, false);
    }

    /**
     * @param known a line that the journal is known to have, since a database of this folder had it
     * @param copied whether the database is a copy: where that does not fit, nothing is said of the journal
     */
    Replay(Projection projection, Database database, Ledger.Position known, boolean copied) {
        this.projection = projection;
        this.fresh = database.isFresh();
        this.writing = database.writing();
        this.position = Ledger.position(writing.tx());
        this.known = known;
        this.copied = copied;
    }

    /** The last line that the database held already; 0 for none. */
    long heldBefore() {
        return position.n();
    }

    @Override
    public boolean wants(long n, byte[] line) {
        return isNew(n);
    }

    private boolean isNew(long n) {
        return n > position.n();
    }

    @Override
    public void passed(long n, String hash) {
        seen = n;
        head = hash;
        if (n == known.n() && !hash.equals(known.hash())) {
            throw new Damaged(otherRecord(n));
        }
        if (n == position.n() && !hash.equals(position.hash())) {
            throw copied ? new NotTaken(otherRecord(n), null) : new Damaged(otherRecord(n));
        }
    }

    private static String otherRecord(long n) {
        return "record " + n + ": the database was made from another record";
    }

    @Override
    public void line(JournalLine line) {
        if (!isNew(line.n())) {
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

    @Override
    public void end(long n) {
        if (known.n() > seen) {
            throw new Damaged(cut(known.n()));
        }
        if (position.n() > seen) {
            throw copied ? new NotTaken(cut(position.n()), null) : new Damaged(cut(position.n()));
        }
        commit();
    }

    private String cut(long knows) {
        return "record " + (seen + 1) + ": the journal was cut; the database knows " + knows
                + " records, the journal has " + seen;
    }
}
