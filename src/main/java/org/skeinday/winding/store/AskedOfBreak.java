package org.skeinday.winding.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.motor.MotorStep;
import org.skeinday.winding.MotorBreak;

/** What is asked and was confirmed of a wind in which a motor broke, as marks of that break: files have breaks and no winds. */
final class AskedOfBreak {
    private AskedOfBreak() {}

    /** Turns are typed after the wind, torques tapped. */
    static List<ValueMarked> of(MotorStep broke, MotorBreak.Asked asked, Optional<ValueMarked> count) {
        List<ValueMarked> marks = new ArrayList<>();
        Double turns = broke.motorTurns();
        if (turns != null) {
            count.ifPresent(said -> marks.add(new ValueMarked(
                    broke.id(), said.measured(), turns, said.source(), true, said.confirmedBy(), said.atMs())));
        }
        if (!asked.turns().isEmpty()) {
            add(marks, broke, Measured.CRANK_TURNS, broke.motorTurns(), Source.TYPED);
        }
        if (!asked.torque().isEmpty()) {
            add(marks, broke, Measured.PEAK_TORQUE, broke.torqueNmm(), Source.TAP);
        }
        return marks;
    }

    private static void add(
            List<ValueMarked> marks, MotorStep broke, Measured what, @Nullable Double number, Source source) {
        if (number != null) {
            marks.add(new ValueMarked(broke.id(), what.word(), number, source.word(), false, null, null, true));
        }
    }
}
