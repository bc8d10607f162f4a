package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WatchLeft;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** A device becomes one of an attempt's watches. */
public final class TakeWatch {
    private TakeWatch() {}

    /**
     * Takes one of the timekeepers' places, 1 to 3.
     *
     * @param over true to take it from the device that has it, which has failed or is away
     * @param change true where this device leaves the one that it has for it; null for no
     * @param allowed why the chief lets somebody time their own team's entry; null for no such word
     * @param pin whether the coach's PIN was given; null for no
     */
    public record TakePlace(
            String attempt,
            int slot,
            @Nullable Boolean over,
            @Nullable Boolean change,
            @Nullable String allowed,
            @Nullable Boolean pin) {}

    static Decision decide(Tx tx, ActContext context, TakePlace place) {
        Optional<AttemptNow> attempt = AttemptStore.find(tx, place.attempt());
        if (attempt.isEmpty()) {
            return Decision.unknown("There is no such attempt any more; look again");
        }
        if (!attempt.get().state().isOpen()) {
            return Decision.refused(
                    "slot", PhaseGate.wrong(tx, context, attempt.get(), "Nobody takes a watch of it any more"));
        }
        int timekeepers =
                EventStore.find(tx, attempt.get().eventId()).orElseThrow().timekeepers();
        if (place.slot() < 1 || place.slot() > timekeepers) {
            return Decision.refused(
                    "slot", "The rules ask for watch 1 to " + timekeepers + ", but this was watch " + place.slot());
        }
        Optional<Decision> own = OwnEntry.refused(tx, context.person(), attempt.get(), place);
        if (own.isPresent()) {
            return own.get();
        }
        List<Fact> left = new ArrayList<>();
        for (WatchTaken taken : WatchStore.watches(tx, place.attempt())) {
            boolean ownWatch = taken.device().equals(context.device());
            if (ownWatch && taken.slot() == place.slot()) {
                continue; // it keeps what it has
            }
            if (ownWatch && !taken.device().equals("laptop")) {
                if (!Boolean.TRUE.equals(place.change())) {
                    return Decision.refused("slot", "This device already is watch " + taken.slot());
                }
                if (attempt.get().state() == State.RELEASED || attempt.get().state() == State.LANDED) {
                    return Decision.refused(
                            "slot",
                            "This device is watch " + taken.slot()
                                    + " of this flight. It becomes another one before the release, or for the next attempt");
                }
                left.add(Fact.of("watch.left", new WatchLeft(taken.attemptId(), taken.slot(), taken.device())));
            }
            if (taken.slot() == place.slot() && !Boolean.TRUE.equals(place.over())) {
                return Decision.refused("slot", "Watch " + place.slot() + " is taken by another device; take another");
            }
            if (taken.slot() == place.slot() && attempt.get().state() == State.LANDED && !held(tx, context, place)) {
                return Decision.refused(
                        "slot",
                        "The flight has landed: watch " + place.slot() + " stays with the device that timed it, which"
                                + " signs for it");
            }
        }
        var fact = new WatchTaken(
                place.attempt(),
                place.slot(),
                context.device(),
                context.person(),
                TakenInAir.since(tx, context, place.attempt(), place.slot()),
                place.allowed() == null || place.allowed().isBlank()
                        ? null
                        : place.allowed().strip());
        left.add(Fact.of("watch.taken", fact));
        return new Decision.Decided(left, Map.of(), AttemptActions.TOPICS);
    }

    private static boolean held(Tx tx, ActContext context, TakePlace place) {
        return WatchActions.holds(tx, context, place.attempt(), place.slot());
    }
}
