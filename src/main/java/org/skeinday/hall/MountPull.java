package org.skeinday.hall;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.Section;
import org.skeinday.units.Preconditions;

/**
 * What a stretched motor pulls on its mount, and what the mount is pull-tested to. About 5 N at four times its length for
 * 4 mm² of rubber (common practice), in proportion to the section; more at five times: 1.43 times as much by the stress of
 * a vulcanised strip at both stretches (Treloar, Trans. Faraday Soc. 40, 1944; straight between his points), straight
 * between four and five. Less than four times is taken as four.
 */
public final class MountPull {
    private static final double NEWTON_PER_MM2 = 5.0 / 4.0;
    private static final double AT_FIVE = 1.43;
    /** The mount has to hold this many times the pull: a jerk and a second motor are more than a quiet one (own default). */
    public static final double FACTOR = 2;

    private MountPull() {}

    /**
     * Newtons; empty when the section or the stretch is not known, or the stretch is above five times, where nothing is
     * known of the pull.
     *
     * @param section of all motors that hang on the mount at once
     * @param stretch full stretch in relaxed lengths
     */
    public static OptionalDouble newtons(@Nullable Section section, @Nullable Double stretch) {
        if (section == null || stretch == null || !(stretch >= 1 && stretch <= 5)) {
            return OptionalDouble.empty();
        }
        double more = 1 + Math.max(0, stretch - 4) * (AT_FIVE - 1);
        return OptionalDouble.of(section.squareMillimetres() * NEWTON_PER_MM2 * more);
    }

    /**
     * What to pull the mount with before the first crank turn, in whole newtons, up.
     *
     * @param factor how many times the pull, 1 to 10; {@link #FACTOR} unless the coach says otherwise
     */
    public static OptionalDouble testNewtons(@Nullable Section section, @Nullable Double stretch, double factor) {
        Preconditions.within("The factor of the pull test", factor, 1, 10);
        OptionalDouble pull = newtons(section, stretch);
        return pull.isPresent() ? OptionalDouble.of(Math.ceil(pull.getAsDouble() * factor - 1e-9)) : pull;
    }
}
