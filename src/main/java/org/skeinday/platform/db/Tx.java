package org.skeinday.platform.db;

import org.jooq.DSLContext;

/** One open transaction. Every store method takes it, so that nothing is read or written outside of one. */
public final class Tx {
    private final DSLContext sql;
    private final Prepared prepared;

    public Tx(DSLContext sql) {
        this.sql = sql;
        this.prepared = new Prepared(sql);
    }

    public DSLContext sql() {
        return sql;
    }

    Prepared prepared() {
        return prepared;
    }
}
