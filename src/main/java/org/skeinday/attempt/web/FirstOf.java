package org.skeinday.attempt.web;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;

/** Finds what comes before anything else. One query while there is nothing, which is nearly always. */
final class FirstOf {
    private FirstOf() {}

    static List<FirstView.Item> items(Tx tx) {
        return EventStore.next(tx).stream()
                .flatMap(event -> BreakRecord.mayComeFirst(tx, event.id()).stream())
                .flatMap(id -> LiveAttempts.find(tx, id).stream())
                .flatMap(live -> item(tx, live).stream())
                .toList();
    }

    private static Optional<FirstView.Item> item(Tx tx, LiveAttempt live) {
        FirstView.@Nullable Ask ask = ask(live.phase());
        return ask == null
                ? Optional.empty()
                : Optional.of(new FirstView.Item(ask, live.id(), String.valueOf(live.motorId()), title(tx, live)));
    }

    private static FirstView.@Nullable Ask ask(AttemptPhase phase) {
        if (phase instanceof AttemptPhase.Broke broke) {
            return !broke.peopleSafe() ? FirstView.Ask.PEOPLE_SAFE : broke.where() == null ? FirstView.Ask.WHERE : null;
        }
        return phase.name() == AttemptPhase.Name.RUN_BACK ? FirstView.Ask.RUN_BACK : null;
    }

    private static String title(Tx tx, LiveAttempt live) {
        String entry = EntryStore.find(tx, live.entryId()).map(EntryAdded::name).orElse("an entry");
        String motor = Optional.ofNullable(live.motorId())
                .flatMap(id -> MotorStore.find(tx, id))
                .map(MotorAdded::tag)
                .map(tag -> ", motor " + tag)
                .orElse("");
        return entry + ", attempt " + live.number() + motor;
    }
}
