package org.skeinday.attempt.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.MotorsInHand;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;

/** Why no motor is offered to an entry, and where that is mended. */
final class NoMotor {
    private static final int MOST = 6;

    private NoMotor() {}

    /** One line of a card. @param named whether another can be named on this card later */
    static NowView.Line line(Tx tx, EntryAdded entry, boolean named) {
        return Apart.made(
                "Why no motor is offered", () -> why(tx, entry, named), words -> new NowView.Line("motor", words));
    }

    private static NowView.Line why(Tx tx, EntryAdded entry, boolean named) {
        List<String> declared = EntryStore.motorsOf(tx, entry.id());
        Map<String, String> inHand = MotorsInHand.byMotor(tx, entry.eventId());
        List<MotorLife> its = MotorLifeStore.all(tx).stream()
                .filter(life -> life.motor().team().equals(entry.team()))
                .filter(life ->
                        declared.isEmpty() || declared.contains(life.motor().id()))
                .toList();
        if (its.isEmpty()) {
            return new NowView.Line(
                    "motor", "none: no motor of " + entry.team() + " is on record. Prepare, page Motors, names them.");
        }
        String each = its.stream()
                .limit(MOST)
                .map(life -> life.motor().tag() + " "
                        + Optional.ofNullable(inHand.get(life.motor().id()))
                                .flatMap(attempt -> AttemptStore.find(tx, attempt))
                                .map(holder -> "is with " + name(tx, holder))
                                .orElse(state(life)))
                .collect(Collectors.joining(", "));
        String more = its.size() > MOST ? " and " + (its.size() - MOST) + " more" : "";
        return new NowView.Line(
                "motor",
                "none can be flown now: " + each + more + ". Bench has what each needs"
                        + (named ? "; as soon as one is ready it is named here, under Another motor." : "."));
    }

    private static String state(MotorLife life) {
        return life.handedIn() ? "is handed in" : "is " + life.stage().word();
    }

    private static String name(Tx tx, AttemptNow attempt) {
        return EntryStore.find(tx, attempt.entryId()).map(EntryAdded::name).orElse("another entry");
    }
}
