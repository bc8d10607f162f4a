package org.skeinday.winding;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;

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
        Limit.within("The loop in mm", loop.millimetres(), 1, 5_000);
        Limit.within("Breaking turns", breakingTurns.doubleValue(), 1, 100_000);
        Limit.within("The winder's ratio", ratio.doubleValue(), 0.1, 100);
        Limit.within("The fraction of breaking turns", fraction.doubleValue(), 0.01, 1.2);
        Limit.within("The stretch", stretch.doubleValue(), 1, 8);
        Limit.within("The share at full stretch", share.doubleValue(), 0.01, 1);
        Limit.within("The back-off in crank turns", backOff, 0, 1_000);
        double full = loop.millimetres() * stretch.doubleValue();
        if (lane != null) {
            Limit.within("The lane in mm, not shorter than the loop", lane.millimetres(), loop.millimetres(), 100_000);
            full = Math.min(full, lane.millimetres());
        }
        Limit.within("The finish length in mm, not beyond full stretch", finish.millimetres(), 1, full);
    }
}
