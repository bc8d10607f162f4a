package org.skeinday.prepare.action;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.AttemptActions;
import org.skeinday.attempt.action.RulesChange;
import org.skeinday.attempt.action.RulesChange.Rules;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.Terms;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.WindowMoved;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/**
 * Once a flight is official, rules are changed with the coach's PIN and a reason, after it was seen what that moves; a window
 * is moved with a reason, and changes no verdict.
 *
 * @param reason why; null or empty where nobody was asked yet
 * @param pin whether the coach's PIN was given
 * @param shown what the change moves, as the form showed it; null or empty where it showed nothing yet
 */
public record FrozenRules(
        @Nullable String reason, boolean pin, @Nullable String shown) {
    /** Fields of the form: what is moved, why, and the PIN. */
    public static final String MOVES = "moves";

    public static final String WHY = "frozen-why";
    public static final String PIN = "pin";
    static final FrozenRules NOTHING_SAID = new FrozenRules(null, false, null);

    /** What else becomes of an act that makes these facts, or why it is refused. */
    record Outcome(Optional<Decision> refused, List<Fact> more) {
        static Outcome refused(Decision why) {
            return new Outcome(Optional.of(why), List.of());
        }
    }

    Outcome of(Tx tx, ActContext context, PutRow.Put put, List<Fact> facts) {
        Optional<RulesChange> change = after(tx, facts).flatMap(rules -> RulesChange.of(tx, context, rules));
        if (change.isPresent()) {
            return changed(context, put, change.get());
        }
        List<WindowMoved> moved = moved(tx, context, facts, why());
        if (moved.isEmpty()) {
            return new Outcome(Optional.empty(), List.of());
        }
        return AttemptActions.wrongWords(
                        WHY, why(), "Flights are official: say why the window is moved. It changes no verdict.")
                .map(Outcome::refused)
                .orElseGet(() -> new Outcome(
                        Optional.empty(),
                        moved.stream()
                                .map(fact -> Fact.of("window.moved", fact))
                                .toList()));
    }

    private String why() {
        return reason == null ? "" : reason.strip();
    }

    private Outcome changed(ActContext context, PutRow.Put put, RulesChange change) {
        String moves = change.words();
        if (!change.withoutWatches().isEmpty()) {
            return Outcome.refused(Decision.refused(MOVES, mixed(change.withoutWatches())));
        }
        Map<String, String> wrong = new LinkedHashMap<>();
        if (!moves.equals(shown)) {
            wrong.put(MOVES, moves);
        }
        AttemptActions.wrongWords(WHY, why(), "Say why: it stands on the result sheet and the wall")
                .filter(Decision.Refused.class::isInstance)
                .ifPresent(no -> wrong.put(WHY, ((Decision.Refused) no).reason()));
        if (!pin) {
            wrong.put(PIN, "The rules are frozen: the coach's PIN changes them");
        }
        if (!wrong.isEmpty()) {
            wrong.putIfAbsent(MOVES, moves);
            return Outcome.refused(
                    new Decision.Refused("The rules are frozen since the first official flight. " + moves, wrong));
        }
        return new Outcome(Optional.empty(), change.facts(context, why(), cells(put)));
    }

    private static String mixed(List<String> titles) {
        String more = titles.size() > 3 ? " and " + (titles.size() - 3) + " more" : "";
        return "Official already, and no watch to compute anew from: "
                + titles.stream().limit(3).collect(Collectors.joining("; ")) + more
                + ". Times of two steps never stand on one sheet: leave step, rounding and watches as they are, or type"
                + " in what the watches of these showed.";
    }

    /** Which fields are others, as they were typed. */
    private static String cells(PutRow.Put put) {
        Map<String, String> seen = put.seen() == null ? Map.of() : put.seen();
        return put.cells().entrySet().stream()
                .filter(cell -> !cell.getValue().equals(seen.getOrDefault(cell.getKey(), "")))
                .map(cell -> cell.getKey() + " " + shown(seen.getOrDefault(cell.getKey(), "")) + " → "
                        + shown(cell.getValue()))
                .sorted()
                .collect(Collectors.joining(", "));
    }

    private static String shown(String cell) {
        return cell.isEmpty() ? "–" : cell;
    }

    /** The rules as they would be; empty where no fact is of rules. */
    private static Optional<Rules> after(Tx tx, List<Fact> facts) {
        for (Fact fact : facts) {
            if (fact.kind().equals("event.changed") && fact.body() instanceof EventAdded event) {
                return Rules.now(tx, event.id()).map(now -> new Rules(event, now.flights(), now.terms()));
            }
            if (fact.body() instanceof FlightRules flights) {
                return Rules.now(tx, flights.eventId()).map(now -> new Rules(now.event(), flights, now.terms()));
            }
            if (fact.body() instanceof Terms terms) {
                return Rules.now(tx, terms.eventId()).map(now -> new Rules(now.event(), now.flights(), terms));
            }
        }
        return Optional.empty();
    }

    private static List<WindowMoved> moved(Tx tx, ActContext context, List<Fact> facts, String why) {
        List<WindowMoved> moved = new ArrayList<>();
        for (Fact fact : facts) {
            if (fact.kind().equals("window.changed") && fact.body() instanceof WindowAdded window) {
                WindowStore.ofEvent(tx, window.eventId()).stream()
                        .filter(before -> before.id().equals(window.id()) && isMoved(before, window))
                        .filter(before -> EventStore.find(tx, window.eventId())
                                .filter(event -> RulesChange.areFrozen(tx, event))
                                .isPresent())
                        .map(before -> moved(context, before, window, why))
                        .forEach(moved::add);
            }
        }
        return moved;
    }

    private static boolean isMoved(WindowAdded before, WindowAdded after) {
        return before.opensAtMs() != after.opensAtMs() || before.closesAtMs() != after.closesAtMs();
    }

    private static WindowMoved moved(ActContext context, WindowAdded before, WindowAdded after, String why) {
        return new WindowMoved(
                context.nextId(),
                after.eventId(),
                after.entryId(),
                context.now().toEpochMilli(),
                context.personOrNull(),
                why,
                before.opensAtMs(),
                before.closesAtMs(),
                after.opensAtMs(),
                after.closesAtMs());
    }
}
