package org.skeinday.attempt.store;

import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.FullHands;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.device.Device;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.platform.db.Tx;

/** Whose hands are on a motor, by the person under whose name a device has joined. */
public final class HandsAtMotor {
    /** A device of this role only looks on. */
    private static final String LOOKS_ON = "viewer";

    private HandsAtMotor() {}

    /** What the hands rule says of a device at one attempt. @param person of the device, empty where it is nobody's own */
    public static FullHands of(Tx tx, LiveAttempt live, String person) {
        return person.isEmpty() || !FullHands.binds(live)
                ? FullHands.FREE
                : EntryStore.find(tx, live.entryId())
                        .filter(EntryAdded::own)
                        .map(entry -> of(tx, live, entry, person))
                        .orElse(FullHands.FREE);
    }

    private static FullHands of(Tx tx, LiveAttempt live, EntryAdded entry, String person) {
        Optional<String> task = Assignments.taskOfHands(tx, entry, live.number(), person);
        return task.isEmpty()
                ? FullHands.FREE
                : FullHands.of(live, task, reads(tx, entry, live, person), others(tx, entry, live, person));
    }

    /** The same for all that is under way: whoever is bound by one motor has no hand for another. */
    public static FullHands ofAll(Tx tx, List<AttemptNow> underWay, String person) {
        return person.isEmpty()
                ? FullHands.FREE
                : underWay.stream()
                        .flatMap(attempt -> LiveAttempts.find(tx, attempt.id()).stream())
                        .map(live -> of(tx, live, person))
                        .filter(hands -> !hands.task().isEmpty())
                        .reduce((one, other) -> one.hasKeys() ? other : one)
                        .orElse(FullHands.FREE);
    }

    /** Whether the device that reads a wind is that of somebody who has no key for it. */
    public static boolean isReaderBound(Tx tx, LiveAttempt live, String device) {
        return DeviceStore.ofId(tx, device)
                .map(reader -> !of(tx, live, reader.person()).hasKeys())
                .orElse(false);
    }

    private static boolean reads(Tx tx, EntryAdded entry, LiveAttempt live, String person) {
        return Assignments.named(tx, entry, live.number(), "reads")
                .filter(assigned -> assigned.people().contains(person))
                .isPresent();
    }

    /** The laptop by itself is nobody: it stands on its table while one person is alone in the hall. */
    private static boolean others(Tx tx, EntryAdded entry, LiveAttempt live, String person) {
        return DeviceStore.joined(tx).stream()
                .filter(device ->
                        !device.role().equals(LOOKS_ON) && !device.person().equals(person))
                .map(Device::person)
                .anyMatch(other -> other.isEmpty()
                        || Assignments.taskOfHands(tx, entry, live.number(), other)
                                .isEmpty());
    }
}
