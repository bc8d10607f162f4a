package org.skeinday.winding;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;

/**
 * How to wind one motor.
 *
 * @param fullStretch hook to hook where winding starts
 * @param targetCrankTurns the count at which winding ends at the latest
 * @param atFullStretchCrankTurns put on before the first step in
 * @param launchMotorTurns motor turns left after the back-off
 * @param walkIn from the first step in to the finish
 * @param floorMarks five places for tape, from full stretch to finish
 * @param warnings in words
 */
public record WindingPlan(
        Length fullStretch,
        Length finish,
        int targetCrankTurns,
        int atFullStretchCrankTurns,
        BigDecimal launchMotorTurns,
        List<Step> walkIn,
        List<Step> floorMarks,
        List<String> warnings) {
    /** Below this stretch the target is cut in proportion (common practice, until the batch has data there). */
    private static final BigDecimal LEAST_STRETCH = new BigDecimal("3.5");

    private static final int EVERY = 10;

    /** At this count stand at this distance, hook to hook. */
    public record Step(int crankTurns, Length distance) {}

    /** Decimal throughout, and one division at the end: 0.85 of 2700 is 2295 and not a hair less. */
    public static WindingPlan compute(WindingRequest request) {
        List<String> warnings = new ArrayList<>();
        BigDecimal loop = mm(request.loop());
        BigDecimal full = fullStretch(request, loop, warnings);
        int target = target(request, loop, full, warnings);
        int atFull = request.share()
                .multiply(BigDecimal.valueOf(target))
                .setScale(0, RoundingMode.HALF_UP)
                .intValueExact();
        Length from = Length.ofMillimetres(full.doubleValue());
        if (request.fraction().compareTo(BigDecimal.ONE) > 0) {
            warnings.add("More turns than such motors take before they break: eyes covered, nobody in line.");
        }
        refuseNothingToWind(target, request.backOff());
        return new WindingPlan(
                from,
                request.finish(),
                target,
                atFull,
                BigDecimal.valueOf(target - (long) request.backOff()).multiply(request.ratio()),
                walkIn(atFull, target, from, request.finish()),
                floorMarks(atFull, target, from, request.finish()),
                List.copyOf(warnings));
    }

    private static int target(WindingRequest request, BigDecimal loop, BigDecimal full, List<String> warnings) {
        BigDecimal turns = request.fraction().multiply(request.breakingTurns());
        BigDecimal divisor = request.ratio();
        BigDecimal least = loop.multiply(LEAST_STRETCH);
        if (full.compareTo(least) < 0) {
            turns = turns.multiply(full);
            divisor = divisor.multiply(least);
            warnings.add("At " + words(full.divide(loop, MathContext.DECIMAL64)) + " times its length the motor takes"
                    + " fewer turns: the target is cut in proportion below 3.5 until the batch has winds there.");
        }
        return turns.divideToIntegralValue(divisor).intValueExact();
    }

    private static void refuseNothingToWind(int target, int backOff) {
        if (target <= backOff) {
            throw new IllegalArgumentException("The plan must come to more crank turns than the " + backOff
                    + " that are taken off again, but was " + target + "; check breaking turns, ratio and back-off");
        }
    }

    private static BigDecimal fullStretch(WindingRequest request, BigDecimal loop, List<String> warnings) {
        @Nullable Length lane = request.lane();
        BigDecimal wanted = loop.multiply(request.stretch());
        if (lane == null || mm(lane).compareTo(wanted) >= 0) {
            return wanted;
        }
        BigDecimal possible = mm(lane);
        warnings.add("The lane is shorter than " + words(request.stretch())
                + " times the motor: full stretch is cut to "
                + words(possible.divide(loop, MathContext.DECIMAL64)) + " times.");
        return possible;
    }

    /** To the nanometre: inches in binary are off by less, and a lane of just 4.5 lengths is not too short. */
    private static BigDecimal mm(Length length) {
        return BigDecimal.valueOf(length.millimetres()).setScale(6, RoundingMode.HALF_UP);
    }

    private static String words(BigDecimal value) {
        return value.setScale(2, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
    }

    private static List<Step> walkIn(int atFull, int target, Length from, Length to) {
        List<Step> steps = new ArrayList<>();
        steps.add(new Step(atFull, from));
        for (int turns = (atFull / EVERY + 1) * EVERY; turns < target; turns += EVERY) {
            steps.add(new Step(turns, between(turns, atFull, target, from, to)));
        }
        steps.add(new Step(target, to));
        return List.copyOf(steps);
    }

    private static Length between(int turns, int first, int last, Length from, Length to) {
        double share = (double) (turns - first) / (last - first);
        return Length.ofMillimetres(from.millimetres() + share * (to.millimetres() - from.millimetres()));
    }

    private static List<Step> floorMarks(int atFull, int target, Length from, Length to) {
        List<Step> marks = new ArrayList<>();
        for (int quarter = 0; quarter <= 4; quarter++) {
            int turns = atFull + Math.round((target - atFull) * quarter / 4f);
            double mm = from.millimetres() + quarter / 4.0 * (to.millimetres() - from.millimetres());
            marks.add(new Step(turns, Length.ofMillimetres(mm)));
        }
        return List.copyOf(marks);
    }
}
