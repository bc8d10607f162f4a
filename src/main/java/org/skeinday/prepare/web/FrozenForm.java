package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.RulesChange;
import org.skeinday.attempt.web.GivenPin;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.prepare.Sheet;
import org.skeinday.prepare.action.FrozenRules;

/** What a form of rules or of a window asks once a flight is official, and what it brings. */
final class FrozenForm {
    private static final String RULES =
            "Flights are official: the rules are frozen. Saving shows first which times and places a change moves; then it"
                    + " takes a reason, which stands on sheet and wall, and the coach's PIN.";
    private static final String WINDOW =
            "Flights are official: a window that is moved takes a reason, which stands on the sheet. No verdict changes.";

    private FrozenForm() {}

    /** After a wrong PIN was refused. */
    static FrozenRules said(Context ctx) {
        return new FrozenRules(RowForm.param(ctx, FrozenRules.WHY), GivenPin.isThere(ctx), shown(ctx));
    }

    /** What the form showed that the change moves. */
    static String shown(Context ctx) {
        return RowForm.param(ctx, FrozenRules.MOVES);
    }

    /** @param event its name, as the form has it; @param id of what is changed, empty for a new one */
    static FormView.@Nullable Frozen view(
            Context ctx, PrepareContext desk, Sheet thing, String event, String id, Map<String, String> messages) {
        boolean ofRules = thing == Sheet.EVENTS || thing.isOfOneEvent();
        boolean ofWindow = thing == Sheet.WINDOWS && !id.isEmpty();
        if (!ofRules && !ofWindow) {
            return null;
        }
        Optional<EventAdded> known = desk.record().read(tx -> frozen(tx, thing, event, id));
        return known.isEmpty()
                ? null
                : new FormView.Frozen(
                        ofRules ? RULES : WINDOW,
                        messages.getOrDefault(FrozenRules.MOVES, ""),
                        RowForm.param(ctx, FrozenRules.WHY),
                        messages.getOrDefault(FrozenRules.WHY, ""),
                        ofRules,
                        messages.getOrDefault(FrozenRules.PIN, ""));
    }

    private static Optional<EventAdded> frozen(Tx tx, Sheet thing, String event, String id) {
        return EventStore.all(tx).stream()
                .filter(e ->
                        thing == Sheet.EVENTS ? e.id().equals(id) : e.name().equals(event))
                .filter(e -> RulesChange.areFrozen(tx, e))
                .findFirst();
    }
}
