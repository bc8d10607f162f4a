package org.skeinday.exchange;

import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.State;
import org.skeinday.motor.StopRule;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.WindWinder;

/**
 * The wind of an attempt whose hold was read, as far as its row knows it, under the attempt's own id: readings of a hold are of
 * a motor, a batch and a meter, and bleed of none without them. Only of a flight that is over, whose turns were counted on a
 * meter that is named: there nothing is left to be wound, asked or run back.
 */
final class WindOfRow {
    private static final String DEVICE = "file";
    private static final int MOST_CRANK_TURNS = 10_000;

    private WindOfRow() {}

    /** @param ratio of the event's winder, where the place says none @param backOff in crank turns, null where not known */
    static void take(
            Row row,
            ImportContext context,
            AttemptImported attempt,
            Optional<AttemptStation> place,
            double ratio,
            @Nullable Double backOff) {
        Integer stop = attempt.stopCountCrankTurns();
        String motor = attempt.motorId();
        Long at = begun(attempt);
        AttemptStation on = place.orElse(null);
        State state = State.of(attempt.state());
        boolean over = state == State.LANDED || state == State.CLOSED;
        if (!over || motor == null || stop == null || stop > MOST_CRANK_TURNS || at == null) {
            return;
        }
        if (on == null || on.meter() == null) {
            return;
        }
        String id = attempt.id();
        Double off = backOff == null || backOff > stop ? null : backOff;
        context.take(row, "wind.begun", () -> begun(attempt, motor, on, ratio, at));
        context.take(row, "wind.phase", () -> new WindPhase(id + "-stopped", id, WindPhase.STOPPED, 1, at));
        context.take(row, "wind.phase", () -> new WindPhase(id + "-off", id, WindPhase.OFF_METER, 2, at));
        // whose hands did it the row does not say: no clearance is earned by a file
        context.take(row, "wind.winder", () -> new WindWinder(id, WindWinder.NOBODY));
        context.take(row, "wind.counted", () -> new WindCounted(id, null, stop, off, false));
    }

    private static @Nullable Long begun(AttemptImported a) {
        return Stream.of(a.windingAtMs(), a.holdingAtMs(), a.releasedAtMs(), a.landedAtMs(), a.closedAtMs())
                .flatMap(ms -> Optional.ofNullable(ms).stream())
                .findFirst()
                .orElse(null);
    }

    /** A scale that ends before its first mark says nothing. */
    private static WindBegun begun(AttemptImported attempt, String motor, AttemptStation on, double ratio, long at) {
        Double division = on.divisionNmm();
        Double full = on.fullScaleNmm();
        boolean odd = division != null && full != null && full < division;
        return new WindBegun(
                attempt.id(),
                attempt.id(),
                motor,
                on.stationId(),
                on.meter(),
                on.winderRatio() == null ? ratio : on.winderRatio(),
                odd ? null : division,
                odd ? null : full,
                null,
                null,
                0,
                null,
                StopRule.COUNT.word(),
                1,
                DEVICE,
                null,
                at,
                false);
    }
}
