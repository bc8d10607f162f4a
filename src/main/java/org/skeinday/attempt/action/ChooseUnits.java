package org.skeinday.attempt.action;

import java.util.Set;
import org.skeinday.contest.UnitsChosen;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** The team says in what it writes lengths: pages, phones and papers follow. */
public final class ChooseUnits {
    private static final Set<String> TOPICS =
            Set.of("attempts", "contest", "motors", "winds", "checks", "places", "plan");

    /** @param units metric or inch */
    record Chosen(String units) {}

    private ChooseUnits() {}

    public static ActKind<?> kind() {
        return new ActKind<>("units.choose", Chosen.class, ChooseUnits::decide);
    }

    static Decision decide(Tx tx, ActContext context, Chosen chosen) {
        try {
            return Decision.decided(TOPICS, Fact.of("units.chosen", new UnitsChosen(chosen.units())));
        } catch (IllegalArgumentException e) {
            return Decision.refused("units", String.valueOf(e.getMessage()));
        }
    }
}
