package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.contest.EntryAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;

/**
 * With which motor an own entry flies the attempt that is under way, else the one that it calls next, and what is its spare:
 * as the card, the Bench and Winding have them.
 *
 * @param title entry and attempt
 * @param motor its tag; empty for none
 * @param spare its tag; empty for none
 * @param first what keeps the motor that the plan has, as a sentence without its end; empty where it may be wound at once
 */
public record NextMotors(String title, String motor, String spare, String first) {
    /** Of the event at hand, in the order in which the attempts come. */
    public static List<NextMotors> read(Tx tx) {
        return Today.read(tx).stream()
                .flatMap(today -> {
                    MotorsAtHand atHand = new MotorsAtHand(tx);
                    return today.ownByTurn().stream().map(entry -> of(tx, today, atHand, entry));
                })
                .toList();
    }

    static NextMotors of(Tx tx, Today today, MotorsAtHand atHand, EntryAdded entry) {
        Optional<AttemptNow> open = today.underWayOf(entry);
        List<String> tags = new ArrayList<>();
        open.flatMap(a -> Optional.ofNullable(a.motorId()))
                .flatMap(id -> MotorStore.find(tx, id))
                .ifPresent(motor -> tags.add(motor.tag()));
        atHand.own(entry).stream().map(MotorAdded::tag).forEach(tags::add);
        return new NextMotors(
                open.map(today::title)
                        .orElseGet(() ->
                                entry.name() + ", " + today.nextNumber(entry).words()),
                tags.isEmpty() ? "" : tags.get(0),
                tags.size() < 2 ? "" : tags.get(1),
                open.isPresent()
                        ? ""
                        : ComingMotor.of(tx, atHand, entry, today.nextNumber(entry))
                                .map(ComingMotor::words)
                                .orElse(""));
    }

    /** Both, as a page says them. */
    public String words() {
        return motor.isEmpty()
                ? "no motor that can be flown"
                : "motor " + motor
                        + (spare.isEmpty() ? ", no spare" : ", spare " + spare)
                        + (first.isEmpty() ? "" : ": " + first);
    }
}
