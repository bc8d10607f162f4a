package org.skeinday.attempt;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;

/**
 * The one counter of uses: how often each motor was wound beyond half of its breaking turns, in official attempts, at
 * practice, on cards and in files, by day, card and time. What is shown or planned by a use asks here.
 */
public final class MotorUses {
    private final Map<String, MotorAdded> motors;
    private final Map<String, List<MotorWinding>> windings;
    private final Map<String, Integer> before = new HashMap<>();

    private MotorUses(Map<String, MotorAdded> motors, Map<String, List<MotorWinding>> windings) {
        this.motors = motors;
        this.windings = windings;
        windings.forEach((motor, ofMotor) -> {
            int uses = atFirst(motor);
            for (MotorWinding winding : ofMotor) {
                before.put(key(motor, winding.id()), uses);
                if (winding.windId() != null) {
                    before.put(key(motor, winding.windId()), uses);
                }
                uses += winding.use() ? 1 : 0;
            }
        });
    }

    /** @param batches whose K tells the breaking turns of motors that have none of their own */
    public static MotorUses of(WindingEvidence evidence, List<MotorAdded> motors, List<BatchAdded> batches) {
        Map<String, MotorAdded> byId = motors.stream().collect(Collectors.toMap(MotorAdded::id, Function.identity()));
        Map<String, BatchAdded> ofId = batches.stream().collect(Collectors.toMap(BatchAdded::id, Function.identity()));
        Function<String, @Nullable Double> breakingTurns = id -> breakingTurns(byId.get(id), ofId);
        return new MotorUses(
                byId,
                new WindingsOnRecord(evidence, breakingTurns)
                        .all().stream().collect(Collectors.groupingBy(MotorWinding::motorId)));
    }

    private static @Nullable Double breakingTurns(@Nullable MotorAdded motor, Map<String, BatchAdded> batches) {
        return motor == null
                ? null
                : MotorPlan.breakingTurns(motor, batches.get(motor.batchId()))
                        .map(BigDecimal::doubleValue)
                        .orElse(null);
    }

    /**
     * Whether so many turns have used a motor: more than half of those that break it (own default). Where those are not
     * known any turn counts.
     *
     * @param motorTurns that were on, 0 or more
     * @param breakingTurns of the motor, in motor turns; null while not known
     */
    public static boolean isUse(double motorTurns, @Nullable Double breakingTurns) {
        return breakingTurns == null ? motorTurns > 0 : motorTurns > breakingTurns / 2;
    }

    /** How often it was used until now, a winding under way among them. */
    public int of(String motor) {
        return used(motor, winding -> true);
    }

    /** How often it was used until the end of that day, for files that tell a part of a record. @param zone of the hall */
    public int until(String motor, LocalDate last, ZoneId zone) {
        return used(motor, winding -> !winding.on(zone).isAfter(last));
    }

    /**
     * How often it was used before this winding; until now where the motor has no such winding.
     *
     * @param winding id of an attempt, a practice flight or a wind
     */
    public int before(String motor, String winding) {
        Integer uses = before.get(key(motor, winding));
        return uses == null ? of(motor) : uses;
    }

    /** Which use of the motor this winding was, from 1; one on part turns stands with the use after it. */
    public int number(String motor, String winding) {
        return before(motor, winding) + 1;
    }

    private int used(String motor, Predicate<MotorWinding> counts) {
        return atFirst(motor)
                + (int) windings.getOrDefault(motor, List.of()).stream()
                        .filter(MotorWinding::use)
                        .filter(counts)
                        .count();
    }

    /** So often as words on a page. */
    public static String words(int uses) {
        return uses == 0 ? "not used yet" : "used " + uses + (uses == 1 ? " time" : " times");
    }

    private int atFirst(String motor) {
        MotorAdded added = motors.get(motor);
        return added == null ? 0 : added.uses();
    }

    private static String key(String motor, String winding) {
        return motor + " " + winding;
    }
}
