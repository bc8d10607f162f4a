package org.skeinday.attempt;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import org.jspecify.annotations.Nullable;

/**
 * One winding of one motor, as the counter of uses takes it.
 *
 * @param id of the attempt, the practice flight, the wind outside both, or the running back
 * @param windId of the wind that a reader tapped; null where nobody read it
 * @param day of the attempt's event, as yyyy-mm-dd; null outside any attempt, where {@code atMs} tells it
 * @param card number of the attempt among its entry's, from 1; 0 outside any attempt
 * @param atMs when it was, milliseconds since 1970 UTC; of a card without times where it stands among the others
 * @param use whether so many turns were on that they have used the motor
 */
record MotorWinding(
        String id,
        @Nullable String windId,
        String motorId,
        @Nullable String day,
        int card,
        long atMs,
        boolean use) {
    /** In which motors are used up; a card that was keyed in stands between its neighbours. */
    static final Comparator<MotorWinding> ORDER = Comparator.comparingLong(MotorWinding::atMs)
            .thenComparingInt(MotorWinding::card)
            .thenComparing(MotorWinding::id);

    LocalDate on(ZoneId zone) {
        return day == null ? LocalDate.ofInstant(Instant.ofEpochMilli(atMs), zone) : LocalDate.parse(day);
    }
}
