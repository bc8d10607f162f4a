package org.skeinday.attempt;

import java.math.BigDecimal;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.Ceiling;
import org.skeinday.motor.MotorAdded;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.winding.Level;
import org.skeinday.winding.WindingPlan;
import org.skeinday.winding.WindingPolicy;
import org.skeinday.winding.WindingRequest;

/**
 * How to wind this motor for its next use, by the policy's defaults.
 *
 * @param use which winding it will be, 1 for the first
 * @param request what the plan was made from, null when there is none
 * @param plan null when there is none
 * @param why there is none, in words; empty when there is one
 * @param aim what the wind is to end at
 */
public record MotorPlan(
        int use, @Nullable WindingRequest request, @Nullable WindingPlan plan, String why, Aim aim) {
    /** Rings and fingers between the hooks at the end of winding (common practice). */
    private static final double FINISH_EXCESS_MM = 25;

    /** Where a motor is wound for no known model: its finish as a share of its loop (common practice). */
    private static final double FINISH_SHARE = 0.55;

    /**
     * @param ratio motor turns of one crank turn of the winder that it is wound with
     * @param uses that it has had
     */
    public static MotorPlan of(
            EventAdded event,
            double ratio,
            MotorAdded motor,
            @Nullable BatchAdded batch,
            @Nullable ModelAdded model,
            int uses,
            Aim aim) {
        int use = uses + 1;
        Optional<BigDecimal> breaking = breakingTurns(motor, batch);
        if (breaking.isEmpty()) {
            return new MotorPlan(use, null, null, "not known: the batch has no K and the motor no breaking turns", aim);
        }
        try {
            WindingRequest request = request(event, ratio, motor, model, use, breaking.get(), aim.level());
            return new MotorPlan(use, request, WindingPlan.compute(request), "", aim);
        } catch (IllegalArgumentException e) {
            return new MotorPlan(use, null, null, "not possible: " + e.getMessage(), aim);
        }
    }

    /** None. @param why in words */
    public static MotorPlan none(String why) {
        return new MotorPlan(1, null, null, why, new Aim(new Ceiling.NotKnown(why), null, Level.PRACTISED));
    }

    /** As stated for the motor, else by its batch's K; empty while neither is known. */
    public static Optional<BigDecimal> breakingTurns(MotorAdded motor, @Nullable BatchAdded batch) {
        if (motor.breakingTurns() != null) {
            return Optional.of(BigDecimal.valueOf(motor.breakingTurns()));
        }
        Double k = batch == null ? null : batch.kInchGram();
        return k == null
                ? Optional.empty()
                : Optional.of(BigDecimal.valueOf(
                        BreakingTurns.of(k, Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG()))));
    }

    private static WindingRequest request(
            EventAdded event,
            double ratio,
            MotorAdded motor,
            @Nullable ModelAdded model,
            int use,
            BigDecimal breaking,
            Level level) {
        double finish = (model == null ? motor.loopMm() * FINISH_SHARE : model.hookDistanceMm()) + FINISH_EXCESS_MM;
        return new WindingRequest(
                Length.ofMillimetres(motor.loopMm()),
                breaking,
                BigDecimal.valueOf(ratio),
                WindingPolicy.fraction(use),
                WindingPolicy.stretch(use),
                WindingPolicy.SHARE_AT_FULL_STRETCH,
                Length.ofMillimetres(finish),
                level.backOff(),
                event.laneMm() == null ? null : Length.ofMillimetres(event.laneMm()));
    }
}
