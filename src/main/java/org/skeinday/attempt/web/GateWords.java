package org.skeinday.attempt.web;

import java.util.List;
import java.util.function.UnaryOperator;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.store.RunStore;

/** That winding started although something was open: who answered for it, and why. */
final class GateWords {
    private GateWords() {}

    /** @param nameOf display name of a person's id */
    static List<NowView.Line> passes(Tx tx, String attempt, UnaryOperator<String> nameOf) {
        return RunStore.passes(tx, attempt).stream()
                .map(p -> new NowView.Line(
                        "answered for by",
                        nameOf.apply(p.adultId()) + ": " + p.reason() + " (open: "
                                + p.steps().size() + ")"))
                .toList();
    }
}
