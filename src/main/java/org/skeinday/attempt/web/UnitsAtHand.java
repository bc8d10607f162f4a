package org.skeinday.attempt.web;

import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.store.TeamUnits;
import org.skeinday.platform.db.DatabaseTrouble;
import org.skeinday.platform.record.ActStore;
import org.skeinday.units.UnitSystem;

/** The team's units, read again only when the record has gone on. While it cannot be read they are those of before. */
public final class UnitsAtHand {
    private record Known(long n, UnitSystem units) {}

    private final ActStore record;
    private final LongSupplier now;
    private final AtomicReference<@Nullable Known> known = new AtomicReference<>();

    /** @param now number of the last act that is visible */
    public UnitsAtHand(ActStore record, LongSupplier now) {
        this.record = record;
        this.now = now;
    }

    public UnitSystem get() {
        long n = now.getAsLong();
        Known before = known.get();
        if (before != null && before.n() == n) {
            return before.units();
        }
        try {
            UnitSystem units = record.read(TeamUnits::of);
            known.set(new Known(n, units));
            return units;
        } catch (DatabaseTrouble e) { // the page itself says so
            return before == null ? UnitSystem.METRIC : before.units();
        }
    }
}
