package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.MotorsInHand;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.BenchWork;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.Wait;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;

/** Why no motor is offered to an entry, motor by motor: in the same words on Now, Choice, Day and the printed card. */
public final class WhyNoMotor {
    private static final int MOST = 6;

    private static final int MINUTE_S = 60;

    private WhyNoMotor() {}

    /** One line of a card. @param named whether another can be named on this card later */
    static NowView.Line line(Tx tx, EntryAdded entry, boolean named) {
        return Apart.made(
                "Why no motor is offered",
                () -> new NowView.Line(
                        "motor",
                        "none can be flown now: " + words(tx, new MotorsAtHand(tx), entry)
                                + ". Bench has what each needs"
                                + (named ? "; as soon as one is ready it is named here, under Another motor." : ".")),
                words -> new NowView.Line("motor", words));
    }

    /** As part of a sentence, without an end. */
    public static String words(Tx tx, MotorsAtHand atHand, EntryAdded entry) {
        List<String> each = atHand.fitting(entry).stream()
                .sorted(Comparator.comparing(life -> life.motor().tag()))
                .map(life -> atHand.isFlyable(entry, life)
                        ? atHand.neededBy(life, entry)
                                .map(other -> life.motor().tag() + " is needed by " + other)
                                .orElse("")
                        : of(tx, atHand, entry, life))
                .filter(words -> !words.isEmpty())
                .toList();
        if (each.isEmpty()) {
            return hasMotor(tx, entry)
                    ? "no motor of this entry turns as its model does"
                    : "no motor of " + entry.team() + " is on record; Prepare, page Motors, names them";
        }
        String more = each.size() > MOST ? "; and " + (each.size() - MOST) + " more" : "";
        return each.stream().limit(MOST).collect(Collectors.joining("; ")) + more;
    }

    private static boolean hasMotor(Tx tx, EntryAdded entry) {
        return MotorLifeStore.all(tx).stream()
                .anyMatch(life -> life.motor().team().equals(entry.team()));
    }

    /** What keeps one motor of it from being wound now; begins with its tag. */
    static String of(Tx tx, MotorsAtHand atHand, EntryAdded entry, MotorLife life) {
        String tag = life.motor().tag();
        if (atHand.inHand(entry).contains(life.motor().id())) {
            return tag + " is with " + holder(tx, entry, life).orElse("another attempt");
        }
        if (life.handedIn()) {
            return tag + " is handed in";
        }
        String is = tag + " is " + life.stage().word();
        boolean never = life.stage().isOut() || life.stage() == MotorStage.GRITTY;
        return never ? is : is + " and needs " + minutes(MotorLifeStore.waits(tx), life) + " min on the Bench first";
    }

    private static Optional<String> holder(Tx tx, EntryAdded entry, MotorLife life) {
        return Optional.ofNullable(MotorsInHand.byMotor(tx, entry.eventId())
                        .get(life.motor().id()))
                .flatMap(attempt -> AttemptStore.find(tx, attempt))
                .flatMap(attempt -> EntryStore.find(tx, attempt.entryId()))
                .map(EntryAdded::name);
    }

    /** At the least, counted from when its turns are on or it has landed. */
    private static int minutes(Map<Wait.Name, Wait> waits, MotorLife life) {
        int least = BenchWork.of(life, waits, life.sinceMs()).leastS();
        return Math.max(1, (least + MINUTE_S - 1) / MINUTE_S);
    }
}
