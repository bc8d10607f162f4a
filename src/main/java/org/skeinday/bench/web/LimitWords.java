package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.motor.StopRule;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindingPlan;

/**
 * What ends a wind and when to walk in, as one line that stands on the page from before the first crank turn until the
 * motor is off the meter. Of a wind that is begun, as it was begun.
 */
record LimitWords(@Nullable Wind wind, MotorPlan planned, UnitSystem units, OptionalInt ceilingDivision) {
    String words() {
        if (wind != null && wind.begun().stopRule() == StopRule.BREAKING) {
            return "wound until it breaks · " + stepIn();
        }
        List<String> words = new ArrayList<>();
        words.add(turns());
        words.add(torque());
        words.add(stepIn());
        return String.join(" \u00b7 ", words);
    }

    private String turns() {
        @Nullable WindingPlan plan = planned.plan();
        @Nullable
        Integer target = wind != null
                ? wind.begun().targetCrankTurns()
                : plan == null ? null : Integer.valueOf(plan.targetCrankTurns());
        return "turns limit " + (target == null ? "not known" : target + " crank turns");
    }

    private String torque() {
        @Nullable Double nmm = wind == null ? null : wind.begun().ceilingNmm();
        @Nullable
        Torque limit = wind != null
                ? nmm == null ? null : Torque.ofNewtonMillimetres(nmm)
                : planned.aim().ceilingTorque();
        if (limit == null) {
            return "torque limit not known";
        }
        String torque = units.torque(limit);
        return "torque limit "
                + (ceilingDivision.isPresent()
                        ? ceilingDivision.getAsInt() + " on the meter (" + torque + ")"
                        : torque);
    }

    private String stepIn() {
        @Nullable WindingPlan plan = planned.plan();
        @Nullable
        Integer atFull = wind != null
                ? wind.begun().atFullCrankTurns()
                : plan == null ? null : Integer.valueOf(plan.atFullStretchCrankTurns());
        return "step in at " + (atFull == null ? "a count that is not known" : atFull + " crank turns");
    }
}
