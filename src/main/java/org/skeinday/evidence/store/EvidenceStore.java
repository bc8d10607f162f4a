package org.skeinday.evidence.store;

import static org.skeinday.platform.db.schema.Tables.EVIDENCE_MARK;

import java.util.List;
import java.util.Map;
import org.jooq.Condition;
import org.jooq.impl.DSL;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** Where values of flights came from, and which were confirmed. */
public final class EvidenceStore {
    private EvidenceStore() {}

    public static List<FactKind> kinds() {
        return List.of(FactKind.of("flight.marked", ValueMarked.class, Rows.put(EVIDENCE_MARK)));
    }

    /** Of one flight. */
    public static ValueMarks of(Tx tx, String flight) {
        return ValueMarks.of(marks(tx, EVIDENCE_MARK.FLIGHT_ID.eq(flight)));
    }

    /** By flight; who has none is not there. */
    public static Map<String, ValueMarks> byFlight(Tx tx) {
        return ValueMarks.byFlight(all(tx));
    }

    public static List<ValueMarked> all(Tx tx) {
        return marks(tx, DSL.noCondition());
    }

    private static List<ValueMarked> marks(Tx tx, Condition which) {
        return tx.sql()
                .selectFrom(EVIDENCE_MARK)
                .where(which)
                .orderBy(EVIDENCE_MARK.FLIGHT_ID, EVIDENCE_MARK.MEASURED)
                .fetchInto(ValueMarked.class);
    }
}
