package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.Aloft;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AttemptRecord;
import org.skeinday.units.EnumWords;

/** Reads what happened to models in the air, and how their times came about. */
public final class AloftStore {
    private AloftStore() {}

    /**
     * What files say of attempts beside states and times.
     *
     * @param hows how each official time came about, by attempt
     * @param aloft of those attempts of which something is known
     */
    public record Told(Map<String, String> hows, List<Aloft> aloft) {
        public static final Told NOTHING = new Told(Map.of(), List.of());
    }

    /** Of all attempts: one query for both. */
    public static Told told(Tx tx) {
        Map<String, String> hows = new HashMap<>();
        List<Aloft> aloft = new ArrayList<>();
        tx.sql()
                .selectFrom(ATTEMPT)
                .where(ATTEMPT.HOW
                        .isNotNull()
                        .or(ATTEMPT.CAUGHT_MS.isNotNull())
                        .or(ATTEMPT.STEERED.ne(EnumWords.of(Aloft.Steering.NONE))))
                .orderBy(ATTEMPT.ID)
                .forEach(r -> {
                    String how = r.getHow();
                    if (how != null) {
                        hows.put(r.getId(), how);
                    }
                    Aloft seen = value(r);
                    if (!seen.words().isEmpty()) {
                        aloft.add(seen);
                    }
                });
        return new Told(Map.copyOf(hows), List.copyOf(aloft));
    }

    static Aloft value(AttemptRecord r) {
        return new Aloft(r.getId(), r.getCaughtMs(), r.getFreedMs(), r.getCaughtBy(), r.getStillHeld(), r.getSteered());
    }
}
