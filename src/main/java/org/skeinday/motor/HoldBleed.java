package org.skeinday.motor;

import java.util.List;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * How torque bleeds during a hold, close to linear in the logarithm of time: T(t) = T1 · (1 − k · log10(t / t1))
 * (empirical; about 2 % a decade for unfilled natural rubber, memory of Lindley). Says nothing of a latest release
 * before three holds were measured.
 */
public record HoldBleed(List<Hold> holds) {
    public static final int FEWEST_HOLDS = 3;
    /** Common practice while the bleed is not known; editable. */
    public static final double DEFAULT_HOLD_SECONDS = 60;

    public HoldBleed {
        holds = List.copyOf(holds);
    }

    /** What may be said of the latest release. */
    public sealed interface Release {
        /** @param seconds since the last turn; infinite when torque does not fall to what is wanted */
        record Latest(double seconds, String conditions) implements Release {}

        record NotKnown(double holdAtMostSeconds, String reason) implements Release {}
    }

    public boolean isKnown() {
        return holds.size() >= FEWEST_HOLDS;
    }

    /** The median k. @throws IllegalStateException before three holds */
    public double k() {
        if (!isKnown()) {
            throw new IllegalStateException("Bleed needs " + FEWEST_HOLDS + " measured holds, but had " + holds.size());
        }
        return Sample.of(holds.stream().mapToDouble(Hold::bleed).toArray()).median();
    }

    /** Torque expected at {@code seconds} from {@code read} at {@code readAt}, both later than 5 s. */
    public Torque at(double seconds, Torque read, double readAt) {
        requireSettled(readAt);
        requireSettled(seconds);
        double share = (1 - k() * Math.log10(seconds)) / (1 - k() * Math.log10(readAt));
        return Torque.ofNewtonMillimetres(Math.max(0, read.newtonMillimetres() * share));
    }

    /** When torque will have bled from {@code read} at {@code readAt} to {@code wanted}. */
    public Release latestRelease(Torque wanted, Torque read, double readAt, double holdAtMostSeconds) {
        Preconditions.positive("The longest hold in seconds", holdAtMostSeconds);
        requireSettled(readAt);
        if (!isKnown()) {
            return new Release.NotKnown(
                    holdAtMostSeconds, "bleed not known, hold at most " + Math.round(holdAtMostSeconds) + " s");
        }
        Preconditions.positive("The torque read, in N·mm", read.newtonMillimetres());
        String conditions = "from " + holds.size()
                + " measured holds of this batch, readings later than 5 s after the last turn, length unchanged";
        if (wanted.compareTo(read) >= 0) {
            return new Release.Latest(readAt, conditions);
        }
        if (k() <= 0) {
            return new Release.Latest(Double.POSITIVE_INFINITY, conditions);
        }
        double share = wanted.newtonMillimetres() / read.newtonMillimetres();
        double decades = (1 - share * (1 - k() * Math.log10(readAt))) / k();
        return new Release.Latest(Math.pow(10, decades), conditions);
    }

    private static void requireSettled(double seconds) {
        Preconditions.above("Seconds since the last turn", seconds, Hold.SETTLING_SECONDS);
    }
}
