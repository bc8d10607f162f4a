package org.skeinday.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.skeinday.motor.MotorLife;

/** The order of the Bench: first those that a person has put there, then as attempts need them, then the rest by tag. */
public final class BenchOrder {
    private BenchOrder() {}

    /**
     * Motors that are out (broken, lost, retired) stand at the end, whoever needed them.
     *
     * @param byHand motor ids in the order by hand
     * @param needed motor ids, the one that is needed first in front
     */
    public static List<MotorLife> of(List<MotorLife> motors, List<String> byHand, List<String> needed) {
        List<String> order = new ArrayList<>(byHand);
        order.addAll(needed);
        return motors.stream()
                .sorted(Comparator.comparing((MotorLife m) -> m.stage().isOut())
                        .thenComparingInt(m -> place(order, m.motor().id()))
                        .thenComparing(m -> m.motor().tag()))
                .toList();
    }

    private static int place(List<String> order, String motor) {
        int at = order.indexOf(motor);
        return at < 0 ? Integer.MAX_VALUE : at;
    }
}
