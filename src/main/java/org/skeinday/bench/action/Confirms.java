package org.skeinday.bench.action;

import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;

/** Somebody says that a number of a wind or of a break was so: it came from where it came from. */
final class Confirms {
    private Confirms() {}

    /** @param of id of a wind, of its attempt, or of the step that says that a motor broke @param number null for the whole */
    static Fact mark(Tx tx, ActContext context, String of, Measured what, @Nullable Double number) {
        return Fact.of(
                "flight.marked",
                new ValueMarked(
                        of,
                        what.word(),
                        number,
                        EvidenceStore.of(tx, of).source(what, number).word(),
                        true,
                        context.personOrNull(),
                        context.now().toEpochMilli()));
    }
}
