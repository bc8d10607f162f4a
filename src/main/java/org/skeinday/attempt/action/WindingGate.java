package org.skeinday.attempt.action;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.Gate;
import org.skeinday.steps.GatePassed;
import org.skeinday.steps.Step;
import org.skeinday.steps.action.GateAsked;

/**
 * The one gate, asked for an attempt. Own entries only: of other teams nothing is known, and what comes from paper or a file
 * has been wound already.
 */
public final class WindingGate {
    /** The field of a form beside which a refusal stands. */
    public static final String FIELD = "gate";

    private static final String NOTHING = "Nothing is waited for any more: look again";
    private static final int LONGEST_NAME = 80;
    private static final Gate.Verdict OPEN = new Gate.Verdict(List.of(), Optional.empty());

    /** The supervising adult answers for what is open, but for eyes and line. @param adult name as typed */
    public record Pass(String attempt, String adult, String reason) {}

    private WindingGate() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        return List.of(new ActKind<>(
                "gate.pass", Pass.class, (tx, context, content) -> pass(tx, context, content, people.get())));
    }

    /** Whether this attempt may be wound now. */
    public static Gate.Verdict of(Tx tx, AttemptNow attempt) {
        return isOwn(tx, attempt) ? GateAsked.startWinding(tx, wind(tx, attempt)) : OPEN;
    }

    /** With the place at which it is wound, whose list is asked. */
    public static GateAsked.Wind wind(Tx tx, AttemptNow attempt) {
        return new GateAsked.Wind(attempt.eventId(), attempt.id(), station(tx, attempt));
    }

    private static @Nullable String station(Tx tx, AttemptNow attempt) {
        return AttemptsWoundAt.of(tx, attempt).map(StationAdded::id).orElse(null);
    }

    /** Why winding waits, and what to do; empty when it need not. */
    public static Optional<String> refused(Tx tx, AttemptNow attempt) {
        return of(tx, attempt).refused();
    }

    static boolean isOwn(Tx tx, AttemptNow attempt) {
        return EntryStore.find(tx, attempt.entryId()).filter(EntryAdded::own).isPresent();
    }

    private static Decision pass(Tx tx, ActContext context, Pass pass, Map<String, String> people) {
        AttemptNow attempt = AttemptStore.find(tx, pass.attempt()).orElse(null);
        if (attempt == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        String adult = pass.adult().strip();
        if (adult.isEmpty() || adult.length() > LONGEST_NAME) {
            return Decision.refused(
                    "adult", "Name the supervising adult, with at most " + LONGEST_NAME + " characters");
        }
        Optional<Decision> wrong =
                AttemptActions.wrongWords("passed", pass.reason().strip(), AttemptActions.SAY_WHY);
        if (wrong.isPresent()) {
            return wrong.get();
        }
        Gate.Verdict verdict = of(tx, attempt);
        if (attempt.state() != State.CALLED || !verdict.asksTheAdult()) {
            return Decision.refused(
                    FIELD, attempt.state() == State.CALLED ? verdict.refused().orElse(NOTHING) : NOTHING);
        }
        Optional<String> known = people.entrySet().stream()
                .filter(e -> e.getValue().equalsIgnoreCase(adult))
                .map(Map.Entry::getKey)
                .findFirst();
        String id = known.orElseGet(() -> context.nextId());
        var fact = new GatePassed(
                context.ownId(),
                attempt.id(),
                id,
                pass.reason().strip(),
                verdict.forTheAdult().stream().map(Step::id).collect(Collectors.toList()),
                context.now().toEpochMilli(),
                context.device(),
                station(tx, attempt));
        return new Decision.Decided(
                List.of(Fact.of("gate.passed", fact)),
                known.isPresent() ? Map.of() : Map.of(id, adult),
                Set.of("attempts", "checks"));
    }
}
