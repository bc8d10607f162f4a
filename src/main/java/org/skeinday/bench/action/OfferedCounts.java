package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.CameFrom;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.CountedTurns;

/** Counts that the form after a wind proposed and nobody changed are offered, of the wind and of its flight. */
final class OfferedCounts {
    private static final Map<Measured, String> FIELDS = Map.of(
            Measured.AT_FULL, "atFull",
            Measured.CRANK_TURNS, "stop",
            Measured.BACK_OFF, "backOff");

    private OfferedCounts() {}

    /** What is as it was keeps what was said of it. @param proposed fields of the form that stand as it proposed them */
    static List<Fact> marks(Tx tx, ActContext context, Wind before, Wind counted, List<String> proposed) {
        Map<Measured, Double> were = CountedTurns.of(before);
        String attempt = counted.broke().isPresent() ? null : counted.begun().attemptId();
        List<Fact> facts = new ArrayList<>();
        CountedTurns.of(counted).forEach((what, turns) -> {
            if (!turns.equals(were.get(what))) {
                boolean offered = proposed.contains(FIELDS.get(what));
                mark(tx, context, counted.begun().id(), what, turns, offered, facts);
                if (what != Measured.AT_FULL) {
                    mark(tx, context, attempt, what, turns, offered, facts);
                }
            }
        });
        return facts;
    }

    /** A number that was offered once and is typed now was typed. */
    private static void mark(
            Tx tx,
            ActContext context,
            @Nullable String of,
            Measured what,
            Double turns,
            boolean offered,
            List<Fact> to) {
        if (of == null) {
            return;
        }
        ValueMarks said = EvidenceStore.of(tx, of);
        if (offered != said.isOffered(what, turns)) {
            to.add(CameFrom.mark(context, of, what, turns, offered ? Source.OFFERED : Source.TYPED));
        }
    }
}
