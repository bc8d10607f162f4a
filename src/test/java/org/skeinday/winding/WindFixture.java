package org.skeinday.winding;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A wind as the reader taps it: times in ms since the first crank turn; marks are named m1, m2 … as tapped. */
final class WindFixture {
    static final String WIND = "wind-1";

    final List<WindPhase> phases = new ArrayList<>();
    final List<WindMark> marks = new ArrayList<>();
    private @Nullable WindCounted counted;
    private @Nullable Double division = 0.5;
    private @Nullable Double fullScale = 20.0;
    private @Nullable Integer atFull = 120;
    private @Nullable Integer target = 200;

    /** Ratio 10; 200 crank turns, 120 at full stretch, 4 off; ceiling 8 N·mm; a mark is worth 0.5 N·mm of 20. */
    static WindBegun begun(
            double ratio, @Nullable Double division, @Nullable Double fullScale, @Nullable Integer target) {
        return begun(ratio, division, fullScale, target, target == null ? null : 120, 8.0, "torque");
    }

    static WindBegun begun(
            double ratio,
            @Nullable Double division,
            @Nullable Double fullScale,
            @Nullable Integer target,
            @Nullable Integer atFull,
            @Nullable Double ceiling,
            String stop) {
        return new WindBegun(
                WIND,
                "attempt-1",
                "motor-1",
                null,
                "meter-1",
                ratio,
                division,
                fullScale,
                target,
                atFull,
                4,
                ceiling,
                stop,
                2,
                "reader",
                null,
                1_000_000,
                false);
    }

    WindFixture meter(@Nullable Double divisionNmm, @Nullable Double fullScaleNmm) {
        division = divisionNmm;
        fullScale = fullScaleNmm;
        return this;
    }

    WindFixture noPlan() {
        target = null;
        return this;
    }

    /** Turns are planned, and not how many of them at full stretch. */
    WindFixture noFullStretch() {
        atFull = null;
        return this;
    }

    WindFixture up(long... elapsedMs) {
        return marks(1, elapsedMs);
    }

    WindFixture down(long... elapsedMs) {
        return marks(-1, elapsedMs);
    }

    /** So many marks up, one in each second, the first at {@code fromMs}. */
    WindFixture climb(int count, long fromMs) {
        for (int i = 0; i < count; i++) {
            up(fromMs + i * 1000L);
        }
        return this;
    }

    private WindFixture marks(int step, long... elapsedMs) {
        for (long elapsed : elapsedMs) {
            marks.add(new WindMark("m" + (marks.size() + 1), WIND, step, elapsed, 1_000_000 + elapsed, false, null));
        }
        return this;
    }

    /** Somebody read the meter at {@code division}. */
    WindFixture set(int division, long elapsedMs) {
        marks.add(WindMark.set("m" + (marks.size() + 1), WIND, division, elapsedMs, 1_000_000 + elapsedMs));
        return this;
    }

    WindFixture leaveOut(String id) {
        marks.replaceAll(m ->
                m.id().equals(id) ? new WindMark(id, m.windId(), m.step(), m.elapsedMs(), m.atMs(), true, null) : m);
        return this;
    }

    WindFixture phase(String phase, long elapsedMs) {
        phases.add(new WindPhase("p" + (phases.size() + 1), WIND, phase, elapsedMs, 1_000_000 + elapsedMs));
        return this;
    }

    WindFixture counted(@Nullable Integer atFull, int stop, @Nullable Double backOff) {
        counted = new WindCounted(WIND, atFull, stop, backOff, false);
        return this;
    }

    Wind wind() {
        return Wind.of(
                begun(10, division, fullScale, target, target == null ? null : atFull, 8.0, "torque"),
                phases,
                marks,
                counted);
    }

    /** Marks 1 to 3 at full stretch, 4 to 6 walking in, two off, one lost while holding; 120, 200 and 4 crank turns. */
    static WindFixture whole() {
        return new WindFixture()
                .up(20_000, 40_000, 50_000)
                .phase(WindPhase.STEPPING_IN, 60_000)
                .up(70_000, 80_000, 100_000)
                .phase(WindPhase.STOPPED, 100_000)
                .down(102_000, 104_000)
                .phase(WindPhase.BACKED_OFF, 104_000)
                .down(124_000)
                .phase(WindPhase.OFF_METER, 130_000);
    }
}
