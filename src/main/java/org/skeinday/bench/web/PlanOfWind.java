package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.WindingPlan;

/** The plan of one wind as lines, and where to stand at which count. */
record PlanOfWind(MotorPlan planned, UnitSystem units) {
    /** @param stops false for a wind that goes on until the motor breaks: nothing stops it before, nothing is backed off */
    List<BenchView.Line> lines(boolean stops) {
        WindingPlan plan = planned.plan();
        if (plan == null || planned.request() == null) {
            return List.of(new BenchView.Line("winding plan", planned.why()));
        }
        List<BenchView.Line> lines = new ArrayList<>();
        lines.add(new BenchView.Line("start at", units.length(plan.fullStretch()) + " hook to hook"));
        lines.add(new BenchView.Line("at full stretch", plan.atFullStretchCrankTurns() + " crank turns"));
        if (stops) {
            lines.add(new BenchView.Line("turns limit", plan.targetCrankTurns() + " crank turns"));
            lines.add(new BenchView.Line("torque limit", planned.aim().ceilingWords(units)));
        }
        lines.add(new BenchView.Line("launch torque wanted", planned.aim().launchWords(units)));
        if (stops) {
            lines.add(new BenchView.Line("back off", planned.request().backOff() + " crank turns at least"));
        }
        lines.add(new BenchView.Line("finish at", units.length(plan.finish())));
        return lines;
    }

    /** None without a plan. */
    List<WindingView.FloorMark> floor() {
        WindingPlan plan = planned.plan();
        List<WindingView.FloorMark> marks = new ArrayList<>();
        if (plan != null) {
            plan.floorMarks()
                    .forEach(step -> marks.add(new WindingView.FloorMark(
                            marks.size() + 1, String.valueOf(step.crankTurns()), units.length(step.distance()))));
        }
        return marks;
    }
}
