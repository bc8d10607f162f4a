package org.skeinday.winding.store;

import static org.skeinday.platform.db.schema.Tables.WINDING_HELD;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.HeldDoubts;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.WindJudged;

/** What was typed of holds. */
public final class HeldStore {
    private HeldStore() {}

    /**
     * As files have it, which have attempts and no winds.
     *
     * @param readings of each attempt those of its last wind, under the attempt's id
     * @param confirmed readings that somebody said were so, each under the attempt's id
     * @param leftOut attempts whose readings enter no fit though nothing of the readings themselves says so, and why
     */
    public record Told(List<WindHeld> readings, List<WindConfirmed> confirmed, List<WindJudged> leftOut) {
        public static final Told NOTHING = new Told(List.of(), List.of(), List.of());
    }

    /** What came with a file stands there by itself. */
    public static Told byAttempt(Tx tx, WindWorth worth) {
        Map<String, List<HeldRead>> byWind =
                tx.sql().selectFrom(WINDING_HELD).orderBy(WINDING_HELD.WIND_ID, WINDING_HELD.SECONDS).fetch().stream()
                        .collect(Collectors.groupingBy(
                                r -> r.getWindId(),
                                LinkedHashMap::new,
                                Collectors.mapping(
                                        r -> new HeldRead(
                                                r.getSeconds(), r.getTorqueNmm(), r.getResolutionNmm(), r.getTyped()),
                                        Collectors.toList())));
        if (byWind.isEmpty()) {
            return Told.NOTHING;
        }
        Map<String, WindHeld> byAttempt = new LinkedHashMap<>();
        Map<String, List<WindConfirmed>> confirmed = new LinkedHashMap<>();
        Map<String, WindJudged> leftOut = new LinkedHashMap<>();
        byWind.forEach((wind, read) -> {
            byAttempt.put(wind, new WindHeld(wind, read));
            confirmed.put(wind, so(worth, wind, read, wind));
            leaveOut(leftOut, wind, worth.leftOut(wind));
        });
        for (Wind wind : WindStore.ofIds(tx, byWind.keySet())) {
            String attempt = wind.begun().attemptId();
            byAttempt.remove(wind.begun().id());
            confirmed.remove(wind.begun().id());
            leftOut.remove(wind.begun().id());
            if (attempt != null) {
                byAttempt.put(attempt, new WindHeld(attempt, wind.held()));
                confirmed.put(attempt, so(worth, wind.begun().id(), wind.held(), attempt));
                leftOut.remove(attempt);
                leaveOut(leftOut, attempt, worth.besideTheHold(wind));
            }
        }
        return new Told(
                List.copyOf(byAttempt.values()),
                confirmed.values().stream().flatMap(List::stream).toList(),
                List.copyOf(leftOut.values()));
    }

    private static List<WindConfirmed> so(WindWorth worth, String wind, List<HeldRead> read, String attempt) {
        return read.stream()
                .filter(one -> worth.isConfirmed(wind, one))
                .map(one -> new WindConfirmed(HeldDoubts.id(attempt, one), attempt))
                .toList();
    }

    private static void leaveOut(Map<String, WindJudged> leftOut, String attempt, String why) {
        if (!why.isEmpty()) {
            leftOut.put(attempt, new WindJudged(attempt, why, null, 0));
        }
    }
}
