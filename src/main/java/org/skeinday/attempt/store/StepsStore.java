package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY;

import java.util.List;
import org.skeinday.attempt.StepTimes;
import org.skeinday.platform.db.Tx;

/** When the attempts of own entries took their steps, in every event. */
public final class StepsStore {
    private StepsStore() {}

    public static List<StepTimes> ofOwn(Tx tx) {
        return tx.sql()
                .select(
                        ATTEMPT.ID,
                        ATTEMPT.CALLED_AT_MS,
                        ATTEMPT.WINDING_AT_MS,
                        ATTEMPT.HOLDING_AT_MS,
                        ATTEMPT.RELEASED_AT_MS,
                        ATTEMPT.LANDED_AT_MS)
                .from(ATTEMPT)
                .join(CONTEST_ENTRY)
                .on(CONTEST_ENTRY.ID.eq(ATTEMPT.ENTRY_ID).and(CONTEST_ENTRY.OWN))
                .orderBy(ATTEMPT.ID)
                .fetchInto(StepTimes.class);
    }
}
