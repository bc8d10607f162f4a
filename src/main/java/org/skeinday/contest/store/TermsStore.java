package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_TERMS;

import java.util.List;
import org.skeinday.contest.Terms;
import org.skeinday.platform.db.Tx;

/** Reads what events ask beside their rules. */
public final class TermsStore {
    private TermsStore() {}

    public static List<Terms> all(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_TERMS)
                .orderBy(CONTEST_TERMS.EVENT_ID)
                .fetchInto(Terms.class);
    }

    /** Of an event that says nothing, what then holds. */
    public static Terms of(Tx tx, String event) {
        return tx.sql()
                .selectFrom(CONTEST_TERMS)
                .where(CONTEST_TERMS.EVENT_ID.eq(event))
                .fetchOptionalInto(Terms.class)
                .orElseGet(() -> Terms.free(event));
    }
}
