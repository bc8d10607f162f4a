package org.skeinday.attempt.action;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;
import org.skeinday.winding.WindingPolicy;

/** The motors at hand today, and the longest stretch that they ask of the lane. */
public final class TodaysStretch {
    private TodaysStretch() {}

    /** Of own entries' motors that can be flown, and of those under way; empty when there is none. */
    public static Optional<Length> longest(Tx tx) {
        return longest(tx, atHand(tx));
    }

    /** Of all others. */
    static Optional<Length> longestBut(Tx tx, MotorAdded motor) {
        return longest(tx, atHand(tx).filter(m -> !m.id().equals(motor.id())));
    }

    /** The same with this motor, which may not be among those at hand. */
    static Optional<Length> longestWith(Tx tx, MotorAdded motor) {
        return longest(tx, Stream.concat(Stream.of(motor), atHand(tx)));
    }

    private static Optional<Length> longest(Tx tx, Stream<MotorAdded> motors) {
        Map<String, Integer> uses = usesAhead(tx);
        return motors.map(motor -> stretch(motor, uses)).max(Length::compareTo);
    }

    private static Length stretch(MotorAdded motor, Map<String, Integer> uses) {
        return Length.ofMillimetres(motor.loopMm() * ratio(motor, uses));
    }

    /** How often each was used before the wind that it is in, or before its next one. */
    static Map<String, Integer> usesAhead(Tx tx) {
        MotorUses all = MotorUseStore.all(tx);
        Map<String, Integer> uses = new HashMap<>();
        MotorStore.all(tx).forEach(motor -> uses.put(motor.id(), all.of(motor.id())));
        EventStore.next(tx).stream()
                .flatMap(event -> AttemptStore.ofEvent(tx, event.id()).stream())
                .filter(a -> a.state().isBeforeRelease() && a.motorId() != null)
                .forEach(a -> uses.put(String.valueOf(a.motorId()), all.before(String.valueOf(a.motorId()), a.id())));
        return uses;
    }

    /** Full stretch of its next wind in relaxed lengths. @param uses of every motor, by its id */
    static double ratio(MotorAdded motor, Map<String, Integer> uses) {
        int use = uses.getOrDefault(motor.id(), 0) + 1;
        return WindingPolicy.stretch(use).doubleValue();
    }

    static Stream<MotorAdded> atHand(Tx tx) {
        EventAdded event = EventStore.next(tx).orElse(null);
        if (event == null) {
            return Stream.empty();
        }
        List<MotorAdded> motors = MotorLifeStore.all(tx).stream()
                .filter(life -> life.whyNotFlown().isEmpty() && life.stage() != MotorStage.RETIRED)
                .map(MotorLife::motor)
                .toList();
        List<String> wound = AttemptStore.ofEvent(tx, event.id()).stream()
                .filter(a -> a.state().isBeforeRelease() && a.motorId() != null)
                .map(AttemptNow::motorId)
                .toList();
        List<EntryAdded> own = EntryStore.ofEvent(tx, event.id()).stream()
                .filter(EntryAdded::own)
                .toList();
        return motors.stream()
                .filter(m -> wound.contains(m.id()) || own.stream().anyMatch(entry -> flies(tx, entry, m)));
    }

    private static boolean flies(Tx tx, EntryAdded entry, MotorAdded motor) {
        List<String> declared = EntryStore.motorsOf(tx, entry.id());
        return declared.isEmpty() ? entry.team().equals(motor.team()) : declared.contains(motor.id());
    }
}
