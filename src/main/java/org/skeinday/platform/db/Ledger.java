package org.skeinday.platform.db;

import static org.skeinday.platform.db.schema.Tables.ACT;
import static org.skeinday.platform.db.schema.Tables.POSITION;

import java.util.Optional;

/** Which acts the projection holds, and how far along the journal it is. */
public final class Ledger {
    /** The journal's line that was applied last; n = 0 before the first. */
    public record Position(long n, String hash) {}

    /** An act that was applied: line n of the journal, with the sum of its kind and content. */
    public record Known(String sum, long n) {}

    private Ledger() {}

    public static Position position(Tx tx) {
        return tx.sql()
                .selectFrom(POSITION)
                .fetchOptional(r -> new Position(r.getN(), r.getHash()))
                .orElse(new Position(0, ""));
    }

    public static Optional<Known> known(Tx tx, String act) {
        return tx.sql().selectFrom(ACT).where(ACT.ID.eq(act)).fetchOptional(r -> new Known(r.getSum(), r.getN()));
    }

    public static void note(Tx tx, String act, String sum, long n) {
        tx.prepared().run("insert into act (id, sum, n) values (?, ?, ?)", act, sum, n);
    }

    /** How far it is now: once in each transaction, since a row that changes a thousand times in one makes H2 slow. */
    public static void standAt(Tx tx, long n, String hash) {
        tx.prepared().run("merge into position (only_row, n, hash) key (only_row) values (?, ?, ?)", 1, n, hash);
    }
}
