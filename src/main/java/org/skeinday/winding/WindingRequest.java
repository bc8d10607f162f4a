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
 * @param share of the target put on at full stretch, 0 to 1
 * @param finish length at which winding ends
 * @param backOff crank turns taken off again at least, 0 or more
 * @param lane room hook to hook, null when there is room enough
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
        within("The loop in mm", loop.millimetres(), 1, 5_000);
        within("Breaking turns", breakingTurns.doubleValue(), 1, 100_000);
        within("The winder's ratio", ratio.doubleValue(), 0.1, 100);
        within("The fraction of breaking turns", fraction.doubleValue(), 0.01, 1.2);
        within("The stretch", stretch.doubleValue(), 1, 8);
        within("The share at full stretch", share.doubleValue(), 0, 1);
        within("The back-off in crank turns", backOff, 0, 1_000);
        within("The finish length in mm", finish.millimetres(), 1, loop.millimetres() * stretch.doubleValue());
        if (lane != null) {
            within("The lane in mm", lane.millimetres(), finish.millimetres(), 100_000);
        }
    }

    private static void within(String what, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(
                    what + " must be " + plain(least) + " to " + plain(most) + ", but was " + plain(value));
        }
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
