package org.skeinday.winding;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;

/**
 * What a winding plan is made from.
 *
 * @param loop relaxed length, ring to ring
 * @param breakingTurns motor turns, above 0
 * @param ratio motor turns to one crank turn, above 0 and at most 100
 * @param fraction of the breaking turns, above 0 and at most 1.2
 * @param stretch times the relaxed length at full stretch, 1 to 8
 * @param share of the target put on at full stretch, above 0 and at most 1
 * @param finish length at which winding ends, not beyond full stretch
 * @param backOff crank turns taken off again at least, 0 or more
 * @param lane room hook to hook, not shorter than the loop; null when there is room enough
 */
public record WindingRequest(
        Length loop,
        BigDecimal breakingTurns,
        BigDecimal ratio,
        BigDecimal fraction,
        BigDecimal stretch,
        BigDecimal share,
        Length finish,
        int backOff,
        @Nullable Length lane) {
    public WindingRequest {
        Preconditions.within("The loop in mm", loop.millimetres(), 1, 5_000);
        Preconditions.within("Breaking turns", breakingTurns.doubleValue(), 1, 100_000);
        Preconditions.within("The winder's ratio", ratio.doubleValue(), 0.1, 100);
        Preconditions.within("The fraction of breaking turns", fraction.doubleValue(), 0.01, 1.2);
        Preconditions.within("The stretch", stretch.doubleValue(), 1, 8);
        Preconditions.within("The share at full stretch", share.doubleValue(), 0.01, 1);
        Preconditions.within("The back-off in crank turns", backOff, 0, 1_000);
        double full = loop.millimetres() * stretch.doubleValue();
        if (lane != null) {
            Preconditions.within(
                    "The lane in mm, not shorter than the loop", lane.millimetres(), loop.millimetres(), 100_000);
            full = Math.min(full, lane.millimetres());
        }
        Preconditions.within("The finish length in mm, not beyond full stretch", finish.millimetres(), 1, full);
    }
}
