package org.skeinday.winding.store;

import static org.skeinday.platform.db.schema.Tables.WINDING_HELD;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.WindHeld;

/** What was typed of holds. */
public final class HeldStore {
    private HeldStore() {}

    /** Of each attempt its last wind's, under the attempt's id; what came with a file stands there by itself. */
    public static List<WindHeld> byAttempt(Tx tx) {
        Map<String, List<HeldRead>> byWind =
                tx.sql().selectFrom(WINDING_HELD).orderBy(WINDING_HELD.WIND_ID, WINDING_HELD.SECONDS).fetch().stream()
                        .collect(Collectors.groupingBy(
                                r -> r.getWindId(),
                                LinkedHashMap::new,
                                Collectors.mapping(
                                        r -> new HeldRead(
                                                r.getSeconds(), r.getTorqueNmm(), r.getResolutionNmm(), r.getTyped()),
                                        Collectors.toList())));
        Map<String, WindHeld> byAttempt = new LinkedHashMap<>();
        byWind.forEach((wind, read) -> byAttempt.put(wind, new WindHeld(wind, read)));
        tx.sql()
                .select(WINDING_WIND.ID, WINDING_WIND.ATTEMPT_ID)
                .from(WINDING_WIND)
                .where(WINDING_WIND.ID.in(byWind.keySet()).and(WINDING_WIND.ATTEMPT_ID.isNotNull()))
                .orderBy(WINDING_WIND.AT_MS, WINDING_WIND.ID)
                .forEach(r -> {
                    byAttempt.remove(r.value1());
                    byAttempt.put(r.value2(), new WindHeld(r.value2(), byWind.getOrDefault(r.value1(), List.of())));
                });
        return List.copyOf(byAttempt.values());
    }
}
