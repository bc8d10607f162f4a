package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Hands;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;

/**
 * A timekeeper keeps a watch number from attempt to attempt until they change it. Who still times another flight, or has
 * left, keeps none: others see that it is free. The laptop is nobody's and takes a watch where somebody says so.
 */
final class KeptWatches {
    private KeptWatches() {}

    /** @param attempts of the event so far @param attempt id of the one that is called now */
    static List<Fact> at(
            Tx tx, ActContext context, EventAdded event, EntryAdded entry, List<AttemptNow> attempts, String attempt) {
        Map<String, AttemptNow> byId = attempts.stream().collect(Collectors.toMap(AttemptNow::id, Function.identity()));
        List<Fact> kept = new ArrayList<>();
        Set<String> devices = new HashSet<>();
        Set<Integer> slots = new HashSet<>();
        Set<String> busy = busy(tx, attempts);
        for (WatchTaken last : WatchStore.lastTaken(tx, event.id())) {
            AttemptNow timed = byId.get(last.attemptId());
            if (timed == null
                    || !devices.add(last.device())
                    || last.slot() > event.timekeepers()
                    || slots.contains(last.slot())
                    || busy.contains(last.device())
                    || !mayTime(tx, last.device())
                    || OwnEntry.is(tx, last.personId(), event, entry)) {
                continue;
            }
            slots.add(last.slot());
            kept.add(Fact.of(
                    "watch.taken",
                    new WatchTaken(
                            attempt,
                            last.slot(),
                            last.device(),
                            last.personId(),
                            context.now().toEpochMilli(),
                            null)));
        }
        return kept;
    }

    /** Devices that time an attempt which is called, and not landed yet. */
    private static Set<String> busy(Tx tx, List<AttemptNow> attempts) {
        return attempts.stream()
                .filter(a -> a.state().isOpen() && a.state() != State.LANDED)
                .flatMap(a -> WatchStore.watches(tx, a.id()).stream())
                .map(WatchTaken::device)
                .collect(Collectors.toSet());
    }

    private static boolean mayTime(Tx tx, String device) {
        return DeviceStore.ofId(tx, device)
                .map(d -> CallerHands.ofRole(d.role()))
                .filter(hands -> hands == Hands.TIMEKEEPER || hands == Hands.CAPTAIN)
                .isPresent();
    }
}
