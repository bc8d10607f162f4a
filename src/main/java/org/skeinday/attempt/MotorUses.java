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
    /** Uses that no row tells, though one tells that there were more before it. */
    private final Map<String, Integer> missing = new HashMap<>();

    /** @param later of uses that no row tells, how many came after a flight, by motor and flight */
    private MotorUses(
            Map<String, MotorAdded> motors, Map<String, List<MotorWinding>> windings, Map<String, Integer> later) {
        this.motors = motors;
        this.windings = windings;
        windings.forEach((motor, ofMotor) -> {
            int least = ofMotor.stream()
                    .mapToInt(winding -> later.getOrDefault(key(motor, winding.id()), 0))
                    .min()
                    .orElse(0);
            missing.put(motor, Math.max(0, -least));
            count(motor, ofMotor, later);
        });
    }

    private void count(String motor, List<MotorWinding> ofMotor, Map<String, Integer> later) {
        int told = prepared(motor);
        int rows = 0;
        for (MotorWinding winding : ofMotor) {
            Integer after = later.get(key(motor, winding.id()));
            int untold = after == null ? atFirst(motor) : Math.max(0, told - after);
            before.put(key(motor, winding.id()), untold + rows);
            if (winding.windId() != null) {
                before.put(key(motor, winding.windId()), untold + rows);
            }
            rows += winding.use() ? 1 : 0;
        }
    }

    /** @param batches whose K tells the breaking turns of motors that have none of their own */
    public static MotorUses of(WindingEvidence evidence, List<MotorAdded> motors, List<BatchAdded> batches) {
        Map<String, MotorAdded> byId = motors.stream().collect(Collectors.toMap(MotorAdded::id, Function.identity()));
        Map<String, BatchAdded> ofId = batches.stream().collect(Collectors.toMap(BatchAdded::id, Function.identity()));
        Function<String, @Nullable Double> breakingTurns = id -> breakingTurns(byId.get(id), ofId);
        return new MotorUses(
                byId,
                new WindingsOnRecord(evidence, breakingTurns)
                        .all().stream().collect(Collectors.groupingBy(MotorWinding::motorId)),
                evidence.later().stream()
                        .collect(Collectors.toMap(l -> key(l.motorId(), l.flightId()), LaterUses::uses)));
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

    /** Whether this winding is on record. @param winding id of an attempt, a practice flight or a wind */
    public boolean has(String motor, String winding) {
        return before.containsKey(key(motor, winding));
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
        return prepared(motor) + missing.getOrDefault(motor, 0);
    }

    private int prepared(String motor) {
        MotorAdded added = motors.get(motor);
        return added == null ? 0 : added.uses();
    }

    private static String key(String motor, String winding) {
        return motor + " " + winding;
    }
}
