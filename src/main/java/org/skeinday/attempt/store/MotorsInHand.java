package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.skeinday.attempt.State;
import org.skeinday.platform.db.Tx;

/** Motors that attempts of an event have in hand: those of open attempts, and those that still have turns on. */
public final class MotorsInHand {
    private MotorsInHand() {}

    /** Which attempt has it, by motor; ids of both. */
    public static Map<String, String> byMotor(Tx tx, String event) {
        Map<String, String> inHand = new HashMap<>();
        tx.sql()
                .select(ATTEMPT.MOTOR_ID, ATTEMPT.ID)
                .from(ATTEMPT)
                .where(ATTEMPT.EVENT_ID.eq(event).and(ATTEMPT.MOTOR_ID.isNotNull()))
                .and(ATTEMPT.TURNS_ON
                        .isTrue()
                        .or(ATTEMPT.STATE.in(Stream.of(State.values())
                                .filter(State::isOpen)
                                .map(State::word)
                                .toList())))
                .orderBy(ATTEMPT.ID)
                .forEach(r -> inHand.put(r.value1(), r.value2()));
        WoundBeside.now(tx, event).forEach(wound -> inHand.put(wound.motor(), wound.attempt()));
        return inHand;
    }
}
