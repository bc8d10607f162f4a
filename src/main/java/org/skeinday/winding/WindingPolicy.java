package org.skeinday.winding;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.skeinday.units.Preconditions;

/** The trade's defaults (common practice); the coach may type others. */
public final class WindingPolicy {
    public static final BigDecimal SHARE_AT_FULL_STRETCH = new BigDecimal("0.60");
    /** Full windings before a motor is kept from official attempts. */
    public static final int MOST_USES = 5;

    public static final int BACK_OFF_PRACTISED = 2;
    public static final int BACK_OFF_FIRST_HANDLING = 5;
    private static final List<BigDecimal> FRACTIONS = List.of(
            new BigDecimal("0.80"),
            new BigDecimal("0.85"),
            new BigDecimal("0.90"),
            new BigDecimal("0.90"),
            new BigDecimal("0.90"));

    private WindingPolicy() {}

    /** Fraction of breaking turns for the 1st, 2nd … use; from the 5th on as the 5th. */
    public static BigDecimal fraction(int use) {
        return FRACTIONS.get(Math.min(checked(use), FRACTIONS.size()) - 1);
    }

    /** Stretch at the start of winding: 4 for the first use, 5 after it. */
    public static BigDecimal stretch(int use) {
        return BigDecimal.valueOf(checked(use) == 1 ? 4 : 5);
    }

    /** What the use number says about a motor's age; empty up to the third. */
    public static Optional<String> aboutUse(int use) {
        if (use > MOST_USES) {
            return Optional.of(
                    "This motor has had its " + MOST_USES + " full windings; better to keep it for trim flights.");
        }
        return use < MOST_USES - 1
                ? Optional.empty()
                : Optional.of("This is full winding " + use + " of " + MOST_USES
                        + ", after which a motor is kept from official attempts.");
    }

    private static int checked(int use) {
        Preconditions.within("The use", use, 1, 100);
        return use;
    }
}
