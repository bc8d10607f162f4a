package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.contest.EntryAdded;
import org.skeinday.motor.BenchWork;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.Wait;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;

/**
 * A motor that the plan in force has for an attempt and that may not be wound yet.
 *
 * @param words what keeps it, without an end; begins with its tag
 */
public record ComingMotor(MotorAdded motor, String words) {
    private static final int MOST_REASONS = 4;

    private static final int MINUTE_S = 60;

    /** Empty where the plan names none, or one that may be wound at once or never. */
    public static Optional<ComingMotor> of(Tx tx, MotorsAtHand atHand, EntryAdded entry, AttemptNumber number) {
        return atHand.plannedLater(entry, number)
                .map(life -> new ComingMotor(life.motor(), words(tx, atHand, entry, life)));
    }

    /** The same for the attempt that an entry calls next; none where it cannot be found out. */
    static Optional<ComingMotor> next(Tx tx, EntryAdded entry) {
        return Apart.made(
                "What the plan has",
                () -> of(tx, new MotorsAtHand(tx), entry, AttemptNumbers.next(tx, entry)),
                words -> Optional.empty());
    }

    /** Why an entry can fly none now, motor by motor. */
    public static String whyNone(Tx tx, MotorsAtHand atHand, EntryAdded entry) {
        String why = atHand.fitting(entry).stream()
                .sorted(Comparator.comparing(life -> life.motor().tag()))
                .map(life -> atHand.isFlyable(entry, life)
                        ? atHand.neededBy(life, entry)
                                .map(other -> life.motor().tag() + " is needed by " + other)
                                .orElse("")
                        : words(tx, atHand, entry, life))
                .filter(words -> !words.isEmpty())
                .limit(MOST_REASONS)
                .collect(Collectors.joining("; "));
        return why.isEmpty() ? "no motor of this entry turns as its model does" : why;
    }

    private static String words(Tx tx, MotorsAtHand atHand, EntryAdded entry, MotorLife life) {
        String tag = life.motor().tag();
        if (atHand.inHand(entry).contains(life.motor().id())) {
            return tag + " is in an attempt now";
        }
        if (life.handedIn()) {
            return tag + " is handed in";
        }
        String is = tag + " is " + life.stage().word();
        boolean never = life.stage().isOut() || life.stage() == MotorStage.GRITTY;
        return never ? is : is + " and needs " + minutes(MotorLifeStore.waits(tx), life) + " min on the Bench first";
    }

    /** At the least, counted from when its turns are on or it has landed. */
    private static int minutes(Map<Wait.Name, Wait> waits, MotorLife life) {
        int least = BenchWork.of(life, waits, life.sinceMs()).leastS();
        return Math.max(1, (least + MINUTE_S - 1) / MINUTE_S);
    }
}
