package org.skeinday.motor;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code motor.wait}: how long lubricant soaks, a stretched motor is held, a motor rests. Seconds, 0 to a day.
 *
 * @param minimumS going on before it is too early
 * @param preferredS what the timer counts down to, not below the minimum
 * @param maximumS later than this is too late, null when never
 * @param required whether going on too early needs a reason
 */
public record Wait(
        String name, int minimumS, int preferredS, @Nullable Integer maximumS, boolean required) {
    private static final int DAY_S = 24 * 3600;

    /** Each with its default: 0 required, the rest preferred (common practice, editable). */
    public enum Name {
        SOAK(300),
        HOLD(180),
        REST(600);

        private final int preferredS;

        Name(int preferredS) {
            this.preferredS = preferredS;
        }

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        public Wait asUsual() {
            return new Wait(word(), 0, preferredS, null, false);
        }
    }

    public static final List<String> NAMES = List.of(Name.SOAK.word(), Name.HOLD.word(), Name.REST.word());

    public Wait {
        Preconditions.oneOf("A wait", name, NAMES);
        Preconditions.within("The least wait in s", minimumS, 0, DAY_S);
        Preconditions.within("The wished wait in s, not below the least", preferredS, minimumS, DAY_S);
        if (maximumS != null) {
            Preconditions.within("The longest wait in s, not below the wished", maximumS, preferredS, DAY_S);
        }
    }

    /** How a wait stood when it was ended or looked at. */
    public enum Verdict {
        TOO_EARLY,
        EARLY,
        GOOD,
        TOO_LATE
    }

    /** Both ends of each span belong to the better verdict. */
    public Verdict after(long waitedMs) {
        if (waitedMs < minimumS * 1000L) {
            return Verdict.TOO_EARLY;
        }
        if (waitedMs < preferredS * 1000L) {
            return Verdict.EARLY;
        }
        return maximumS != null && waitedMs > maximumS * 1000L ? Verdict.TOO_LATE : Verdict.GOOD;
    }
}
