package org.skeinday.platform.record;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.platform.db.Ledger;
import org.skeinday.platform.db.Tx;

/** Puts journal lines into tables: the one way, living and replaying. */
public final class Projection {
    private final Map<String, FactKind> kinds;

    public Projection(List<FactKind> kinds) {
        this.kinds = kinds.stream().collect(Collectors.toUnmodifiableMap(FactKind::kind, Function.identity()));
    }

    void apply(Tx tx, JournalLine line) {
        for (JournalLine.FactLine fact : line.facts()) {
            FactKind kind = kinds.get(fact.kind());
            if (kind == null) {
                throw new IllegalStateException("no table takes the fact " + fact.kind());
            }
            kind.apply().apply(tx, fact.v(), fact.body());
        }
        Ledger.note(tx, line.act(), line.sum(), line.n(), line.hash());
    }
}
