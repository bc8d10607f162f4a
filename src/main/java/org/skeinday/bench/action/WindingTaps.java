package org.skeinday.bench.action;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.winding.FloorMarkReached;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.store.WindStore;

/** Taps beside the needle's marks and the steps of winding: the meter as it was read, floor marks, slips of the hand. */
public final class WindingTaps {
    private static final Set<String> NEEDLE = Set.of("winds");
    private static final String NO_WIND = "There is no such wind: its first crank turn has not come in";

    private WindingTaps() {}

    /** A mark was missed: the meter shows this division now. */
    record SetMeter(
            String wind,
            int division,
            long elapsedMs,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /** Somebody beside the line sees the winder at a floor mark. @param number 1 to 5 */
    record AtFloorMark(
            String wind,
            int number,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("wind.set", SetMeter.class, WindingTaps::set),
                new ActKind<>("wind.floor-mark", AtFloorMark.class, WindingTaps::atFloorMark),
                new ActKind<>("wind.undo", UndoTap.Undo.class, UndoTap::decide));
    }

    static Decision set(Tx tx, ActContext context, SetMeter set) {
        Wind wind = WindStore.find(tx, set.wind()).orElse(null);
        if (wind == null) {
            return Decision.unknown(NO_WIND);
        }
        Optional<Integer> last = lastDivision(wind.begun());
        if (last.filter(most -> set.division() > most).isPresent()) {
            return Decision.refused("The meter ends at division " + last.get() + ", but was set to " + set.division()
                    + ": read it again");
        }
        long atMs =
                TapTime.of(context, set.serverMs(), set.boundMs(), wind.begun().atMs());
        try {
            var fact = WindMark.set(context.ownId(), set.wind(), set.division(), set.elapsedMs(), atMs);
            return WindActions.read(tx, context, wind, fact);
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage()));
        }
    }

    /** Where the meter's scale ends; empty while nobody has said so. */
    static Optional<Integer> lastDivision(WindBegun begun) {
        Double division = begun.divisionNmm();
        Double fullScale = begun.fullScaleNmm();
        return division == null || fullScale == null
                ? Optional.empty()
                : Optional.of(Wind.levelOf(fullScale, division));
    }

    /** Two who see the same say it once. */
    static Decision atFloorMark(Tx tx, ActContext context, AtFloorMark seen) {
        Wind wind = WindStore.find(tx, seen.wind()).orElse(null);
        if (wind == null) {
            return Decision.unknown(NO_WIND);
        }
        if (wind.floor().stream().anyMatch(mark -> mark.number() == seen.number())) {
            return new Decision.Decided(List.of(), Map.of(), NEEDLE);
        }
        long begunMs = wind.begun().atMs();
        long atMs = TapTime.of(context, seen.serverMs(), seen.boundMs(), begunMs);
        try {
            var fact = new FloorMarkReached(
                    context.ownId(), seen.wind(), seen.number(), Math.max(0, atMs - begunMs), atMs, context.device());
            return Decision.decided(NEEDLE, Fact.of("wind.floor-mark", fact));
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage()));
        }
    }
}
