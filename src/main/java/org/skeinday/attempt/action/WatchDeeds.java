package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** A timekeeper takes a place, sees the release, sees the landing. A tap is never refused for being late. */
public final class WatchDeeds {
    private WatchDeeds() {}

    /** Takes one of the timekeepers' places, 1 to 3. */
    public record TakePlace(String attempt, int slot) {}

    /** The model was released. */
    public record SeenRelease(String attempt, int slot) {}

    /**
     * The model touched the floor.
     *
     * @param ms release to landing on the device's own monotonic clock
     * @param corrects id of this watch's earlier landing tap that was a mistake
     */
    public record SeenLanding(
            String attempt, int slot, long ms, @Nullable String corrects) {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("watch.take", TakePlace.class, WatchDeeds::take),
                new ActKind<>("watch.release", SeenRelease.class, WatchDeeds::release),
                new ActKind<>("watch.landing", SeenLanding.class, WatchDeeds::landing));
    }

    static Decision take(Tx tx, ActContext context, TakePlace place) {
        Optional<AttemptNow> attempt = AttemptStore.find(tx, place.attempt());
        if (attempt.isEmpty() || place.slot() < 1 || place.slot() > 3) {
            return Decision.refused("There is no such place to time from");
        }
        for (WatchTaken taken : AttemptStore.watches(tx, place.attempt())) {
            if (taken.slot() == place.slot()) {
                return Decision.refused("slot", "Watch " + place.slot() + " is taken by another device; take another");
            }
            if (taken.device().equals(context.device()) && !taken.device().equals("laptop")) {
                return Decision.refused("slot", "This device already is watch " + taken.slot());
            }
        }
        var fact = new WatchTaken(place.attempt(), place.slot(), context.device(), context.person());
        return Decision.decided(AttemptDeeds.TOPICS, Fact.of("watch.taken", fact));
    }

    static Decision release(Tx tx, ActContext context, SeenRelease seen) {
        AttemptNow attempt = AttemptStore.find(tx, seen.attempt()).orElse(null);
        if (attempt == null || !holds(tx, context, seen.attempt(), seen.slot())) {
            return notThisWatch(seen.slot());
        }
        return new Decision.Decided(movedTo(State.RELEASED, attempt, context), java.util.Map.of(), AttemptDeeds.TOPICS);
    }

    static Decision landing(Tx tx, ActContext context, SeenLanding seen) {
        AttemptNow attempt = AttemptStore.find(tx, seen.attempt()).orElse(null);
        if (attempt == null || !holds(tx, context, seen.attempt(), seen.slot())) {
            return notThisWatch(seen.slot());
        }
        if (seen.ms() < 0 || seen.ms() > ReadingTaken.LONGEST_MS) {
            return Decision.refused("A flight lasts 0 ms to 2 hours, but this one " + seen.ms() + " ms");
        }
        List<Fact> facts = new ArrayList<>(movedTo(State.LANDED, attempt, context));
        var reading = new ReadingTaken(
                context.newId(0),
                attempt.id(),
                seen.slot(),
                "device",
                context.person(),
                seen.ms(),
                context.now().toEpochMilli(),
                seen.corrects() == null ? null : seen.corrects() + "-0");
        facts.add(Fact.of("attempt.reading", reading));
        return new Decision.Decided(facts, java.util.Map.of(), AttemptDeeds.TOPICS);
    }

    private static Decision notThisWatch(int slot) {
        return Decision.refused("This device is not watch " + slot + " of that attempt; its tap is kept on the device");
    }

    private static boolean holds(Tx tx, ActContext context, String attempt, int slot) {
        return AttemptStore.watches(tx, attempt).stream()
                .anyMatch(w -> w.slot() == slot && w.device().equals(context.device()));
    }

    /** The first watch moves the attempt; what the others say later is a reading only. */
    private static List<Fact> movedTo(State to, AttemptNow now, ActContext context) {
        List<Fact> facts = new ArrayList<>();
        long atMs = context.now().toEpochMilli();
        Attempt attempt = Attempt.of(now);
        if (attempt instanceof Attempt.BeforeRelease before) {
            facts.add(Fact.of("attempt.moved", before.release(atMs)));
            attempt = new ReleasedAttempt(now.id()); // for a landing, the release tap may still be on its way
        }
        if (to == State.LANDED && attempt instanceof ReleasedAttempt released) {
            facts.add(Fact.of("attempt.moved", released.land(atMs)));
        }
        return facts;
    }
}
