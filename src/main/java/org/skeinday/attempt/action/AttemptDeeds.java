package org.skeinday.attempt.action;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptCalled;
import org.skeinday.attempt.AttemptGivenUp;
import org.skeinday.attempt.AttemptMoved;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Calling an attempt, moving it on, giving it up. */
public final class AttemptDeeds {
    static final Set<String> TOPICS = Set.of("attempts");

    private AttemptDeeds() {}

    /** Calls the next attempt of an entry. */
    public record Call(
            String entry, @Nullable String model, @Nullable String motor) {}

    /** Says that an attempt reached a state. */
    public record Move(String attempt, String to) {}

    /** Gives an attempt up, with a reason. */
    public record GiveUp(String attempt, String reason) {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("attempt.call", Call.class, AttemptDeeds::call),
                new ActKind<>("attempt.move", Move.class, AttemptDeeds::move),
                new ActKind<>("attempt.give-up", GiveUp.class, AttemptDeeds::giveUp),
                new ActKind<>("attempt.close", CloseAttempt.Close.class, CloseAttempt::decide));
    }

    static Decision call(Tx tx, ActContext context, Call call) {
        EntryAdded entry = EntryStore.find(tx, call.entry()).orElse(null);
        if (entry == null) {
            return Decision.refused("entry", "There is no such entry; choose one of the list");
        }
        EventAdded event = EventStore.find(tx, entry.eventId()).orElseThrow();
        List<AttemptNow> own = AttemptStore.ofEvent(tx, event.id()).stream()
                .filter(a -> a.entryId().equals(entry.id()))
                .toList();
        for (AttemptNow attempt : own) {
            if (attempt.state().isOpen()) {
                return Decision.refused(entry.name() + "'s attempt " + attempt.number() + " is still "
                        + attempt.state().word() + "; close it or give it up first");
            }
        }
        long official = own.stream().filter(a -> a.state() != State.SCRUBBED).count();
        if (official >= event.attempts()) {
            return Decision.refused(
                    entry.name() + " has had its " + event.attempts() + " attempts; the rules allow no more");
        }
        var fact = new AttemptCalled(
                context.newId(0),
                event.id(),
                entry.id(),
                own.size() + 1,
                emptyToNull(call.model()),
                emptyToNull(call.motor()),
                context.now().toEpochMilli());
        return Decision.decided(TOPICS, Fact.of("attempt.called", fact));
    }

    private static @Nullable String emptyToNull(@Nullable String text) {
        return text == null || text.isBlank() ? null : text;
    }

    static Decision move(Tx tx, ActContext context, Move move) {
        AttemptNow attempt = AttemptStore.find(tx, move.attempt()).orElse(null);
        if (attempt == null) {
            return Decision.refused("There is no such attempt");
        }
        State to = State.of(move.to());
        if (!Set.of(State.WINDING, State.HOLDING, State.RELEASED, State.LANDED).contains(to)
                || !attempt.state().mayBecome(to)) {
            return Decision.refused("An attempt that is " + attempt.state().word() + " cannot become " + to.word());
        }
        var fact = new AttemptMoved(attempt.id(), to.word(), context.now().toEpochMilli());
        return Decision.decided(TOPICS, Fact.of("attempt.moved", fact));
    }

    static Decision giveUp(Tx tx, ActContext context, GiveUp giveUp) {
        AttemptNow attempt = AttemptStore.find(tx, giveUp.attempt()).orElse(null);
        if (attempt == null) {
            return Decision.refused("There is no such attempt");
        }
        if (giveUp.reason().isBlank()) {
            return Decision.refused("reason", "Say why: it stays in the record");
        }
        State to = attempt.state().isBeforeRelease() ? State.SCRUBBED : State.VOID;
        if (!attempt.state().mayBecome(to)) {
            return Decision.refused("An attempt that is " + attempt.state().word() + " cannot be given up");
        }
        var fact = new AttemptGivenUp(
                attempt.id(),
                to.word(),
                context.now().toEpochMilli(),
                giveUp.reason().strip());
        return Decision.decided(TOPICS, Fact.of("attempt.given-up", fact));
    }
}
