package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.HoldingAttempt;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPhase;

/** More turns go on after the last one, as the captain says who has no reader: the hold begins anew with the last of them. */
final class MoreTurns {
    /** @param seen what the form showed, as {@link org.skeinday.attempt.Seen} writes it */
    record More(String attempt, @Nullable String seen) {}

    private MoreTurns() {}

    static Decision decide(Tx tx, ActContext context, More more) {
        return PhaseGate.captain(
                tx,
                context,
                more.attempt(),
                more.seen(),
                AttemptAct.MORE_TURNS,
                known -> new Decision.Decided(goesOn(context, known), Map.of(), PhaseGate.TOPICS));
    }

    /** Where a reader taps the wind its keys go on with it. */
    private static List<Fact> goesOn(ActContext context, AttemptEvidence known) {
        long atMs = context.now().toEpochMilli();
        List<Fact> facts = new ArrayList<>();
        Wind wind = known.presentWind().orElse(null);
        if (wind == null) {
            facts.add(Fact.of("attempt.taken-back", ((HoldingAttempt) Attempt.of(known.now())).windOn(atMs)));
        } else {
            Optional<WindPhase> back = BrokenMotor.backOn(context, wind, atMs);
            back.ifPresent(tap -> facts.add(Fact.of("wind.phase", tap)));
            facts.add(BrokenMotor.again(context, back.map(wind::with).orElse(wind), atMs));
        }
        facts.add(PhaseGate.acted(context, known.now().id(), AttemptAct.MORE_TURNS));
        return facts;
    }
}
