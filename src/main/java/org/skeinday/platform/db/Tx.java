package org.skeinday.platform.db;

import org.jooq.DSLContext;

/** One open transaction. Every store method takes it, so that nothing is read or written outside of one. */
public record Tx(DSLContext sql) {}
