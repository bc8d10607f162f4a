package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Collision;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Removed;
import org.skeinday.standing.CollisionRule;

/** Two models met in the air: the entry is told that it may choose, and chooses. */
public final class CollisionActions {
    /** @param say told, keep, again, or none when there was no collision after all */
    public record Say(String attempt, String say) {}

    private static final String AGAIN = "collision: flown again";

    private CollisionActions() {}

    static Decision decide(Tx tx, ActContext context, Say say) {
        AttemptNow now = AttemptStore.find(tx, say.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        if (!(Attempt.of(now) instanceof Attempt.AfterRelease after)) {
            return Decision.refused(PhaseGate.wrong(
                    tx, context, now, "After a collision the entry chooses between release and official time"));
        }
        FlightRules rules = FlightRulesStore.of(tx, now.eventId());
        if (!rules.letsChoose()) {
            return Decision.refused("By the flight rules of this event a collision changes nothing");
        }
        long atMs = context.now().toEpochMilli();
        Optional<Collision> told = ResultRecord.collision(tx, now.id());
        return switch (say.say()) {
            case "told" ->
                told.isPresent()
                        ? Decision.refused("The entry has been told already")
                        : Decision.decided(
                                AttemptActions.TOPICS,
                                Fact.of("attempt.collided", new Collision(now.id(), atMs, null, null)));
            case "keep", "again" ->
                told.map(collision -> chosen(tx, context, now, after, rules, collision, say.say(), atMs))
                        .orElseGet(() -> Decision.refused("Tell the entry first that it may choose"));
            case "none" ->
                told.filter(c -> c.choice() == null)
                        .map(c -> Decision.decided(
                                AttemptActions.TOPICS, Fact.of("attempt.no-collision", new Removed(now.id()))))
                        .orElseGet(() -> Decision.refused("No entry has been told that it may choose"));
            default -> Decision.refused("An entry keeps its time or flies again, but this was '" + say.say() + "'");
        };
    }

    private static Decision chosen(
            Tx tx,
            ActContext context,
            AttemptNow now,
            Attempt.AfterRelease after,
            FlightRules rules,
            Collision told,
            String choice,
            long atMs) {
        if (told.choice() != null) {
            return Decision.refused("The entry has chosen already: its first word counts");
        }
        var chosen = new Collision(now.id(), told.toldAtMs(), choice, atMs);
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("attempt.collided", chosen)));
        if (chosen.holds(atMs, rules).filter(CollisionRule.Choice.AGAIN::equals).isPresent()) {
            facts.addAll(AttemptActions.withQuietEnded(
                    tx,
                    now.id(),
                    atMs,
                    Fact.of("attempt.given-up", after.declareVoid(atMs, AGAIN).again())));
            facts.add(JudgeFlight.fact(tx, context, now));
        }
        return new Decision.Decided(facts, Map.of(), AttemptActions.TOPICS);
    }
}
