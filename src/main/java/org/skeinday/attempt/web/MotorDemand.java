package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.FullHands;
import org.skeinday.attempt.MotorShares;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.store.HandsAtMotor;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.contest.EntryAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;

/** Which motors the attempts to come need, in order, each with the words for what. */
public final class MotorDemand {
    private MotorDemand() {}

    /**
     * Attempts that are wound, flown or just landed, whose turns are still asked for: first the one that this device reads,
     * until it has landed, then the most urgent.
     */
    public static List<AttemptNow> toWind(Tx tx, String device, long nowMs) {
        return Today.read(tx, nowMs).map(today -> toWind(tx, today, device)).orElse(List.of());
    }

    private static List<AttemptNow> toWind(Tx tx, Today today, String device) {
        List<AttemptNow> open = today.open();
        return open.stream()
                .filter(a -> a.motorId() != null)
                .sorted(Comparator.comparing((AttemptNow a) -> open.size() == 1
                        || today.live(a.id()).phase().name() == AttemptPhase.Name.LANDED
                        || !isReadBy(tx, a, device)))
                .toList();
    }

    private static boolean isReadBy(Tx tx, AttemptNow attempt, String device) {
        return LiveAttempts.evidence(tx, attempt.id()).stream()
                .flatMap(known -> known.presentWind().stream())
                .anyMatch(wind -> wind.begun().device().equals(device));
    }

    /** Others that are under way, each with its phase. @param shown id of the one that a page is about */
    public static List<NowView.Choice> beside(Tx tx, String shown, long nowMs) {
        return Today.read(tx, nowMs).map(today -> today.beside(shown)).orElse(List.of());
    }

    /** What the hands rule says of a device of this person, at whatever is under way. */
    public static FullHands hands(Tx tx, String person, long nowMs) {
        return person.isEmpty()
                ? FullHands.FREE
                : Apart.made(
                        "Whose hands are on a motor",
                        () -> Today.read(tx, nowMs)
                                .map(today -> HandsAtMotor.ofAll(tx, today.open(), person))
                                .orElse(FullHands.FREE),
                        words -> FullHands.FREE);
    }

    /** The motor under way first; then for each own entry, in its turn, the motor that comes next and its spare. */
    public static Map<String, String> of(Tx tx, long nowMs) {
        Map<String, String> needed = new LinkedHashMap<>();
        Today.read(tx, nowMs).ifPresent(today -> {
            today.open().stream()
                    .filter(a -> a.motorId() != null)
                    .forEach(a -> needed.put(String.valueOf(a.motorId()), words(today, a)));
            MotorsAtHand atHand = new MotorsAtHand(tx);
            today.ownByTurn().forEach(entry -> next(today, entry, atHand.own(entry), needed));
        });
        return needed;
    }

    private static String words(Today today, AttemptNow attempt) {
        return "in " + today.entry(attempt.entryId()).name() + ", "
                + attempt.number().words() + ": " + PhaseWords.of(today.live(attempt.id()));
    }

    private static void next(Today today, EntryAdded entry, List<MotorAdded> motors, Map<String, String> needed) {
        String attempt = entry.name() + ", " + today.nextNumber(entry).words();
        for (int i = 0; i < Math.min(MotorShares.NEEDED, motors.size()); i++) {
            needed.putIfAbsent(motors.get(i).id(), (i == 0 ? "for " : "spare for ") + attempt);
        }
    }
}
