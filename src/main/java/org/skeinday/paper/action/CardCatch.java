package org.skeinday.paper.action;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.State;
import org.skeinday.attempt.action.CatchOfWatch;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.paper.CardOrder;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.timing.Contact;
import org.skeinday.timing.HeldFlight;
import org.skeinday.timing.HoldRule;
import org.skeinday.timing.WatchReading;
import org.skeinday.units.FlightTime;

/**
 * What a card's watches show of a model that was caught.
 *
 * @param at a word of {@link CatchOfWatch}, else the landing
 */
record CardCatch(String at, FlightRules rules, boolean visiting) {
    static CardCatch of(Tx tx, EventAdded event, Map<String, String> fields) {
        return new CardCatch(
                fields.getOrDefault(CardOrder.TIMES_AT, ""),
                FlightRulesStore.of(tx, event.id()),
                event.dayKind() == DayKind.VISITING);
    }

    boolean isNobodys() {
        return at.equals(CatchOfWatch.NONE);
    }

    private Optional<HoldRule> counts() {
        return at.equals(CatchOfWatch.AT_CATCH) ? rules.hold() : Optional.empty();
    }

    /** @param watches how many have a time on the card */
    Optional<String> wrong(int watches) {
        boolean asked = isNobodys() || at.equals(CatchOfWatch.AT_CATCH);
        if (asked && visiting) {
            return Optional.of("Elsewhere the announced time counts, whatever caught the model");
        }
        if (asked && rules.hold().isEmpty()) {
            return Optional.of("By the flight rules the clock runs on: watches show the time of the landing");
        }
        return isNobodys() && watches > 0
                ? Optional.of("No watch has the catch, but " + watches + (watches == 1 ? " has" : " have") + " a time:"
                        + " leave it empty, or say that it is the one of the catch")
                : Optional.empty();
    }

    /** For how long the watch is taken to have run. */
    FlightTime ran(FlightTime shown) {
        return counts().map(rule -> CatchOfWatch.over(shown, rule)).orElse(shown);
    }

    WatchReading.Counted reading(String watch, FlightTime shown) {
        return counts().map(rule -> {
                    HeldFlight held = HeldFlight.of(
                            List.of(new Contact("", shown.millis(), null)),
                            ran(shown).millis(),
                            rule);
                    return new WatchReading.Counted(watch, new FlightTime(held.flightMs()), held.how());
                })
                .orElseGet(() -> new WatchReading.Counted(watch, shown));
    }

    List<Fact> marks(Tx tx, ActContext context, String attempt, int slot, FlightTime shown) {
        return counts().map(rule -> CatchOfWatch.marks(tx, context, attempt, slot, shown.millis()))
                .orElse(List.of());
    }

    /** A card of an attempt without a time. */
    Map<String, String> cells() {
        return Map.of(
                "state",
                State.VOID.word(),
                "reason",
                CatchOfWatch.NOBODY_HAS_IT,
                "flown again",
                rules.letsStartAgain() ? "yes" : "no");
    }

    /** The end of an attempt that is on record without one; empty where its watches have it. */
    Optional<Fact> ended(String attempt, long atMs) {
        return isNobodys() ? Optional.of(CatchOfWatch.ended(attempt, rules, atMs)) : Optional.empty();
    }
}
