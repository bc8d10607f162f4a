package org.skeinday.bench.web;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.bench.action.WindActions;
import org.skeinday.contest.StationAdded;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.WindingPlan;

/** What the reader's keys must know, before the first crank turn and on a device that goes on with a wind. */
final class ReaderPresenter {
    private final @Nullable Wind wind;
    private final MotorPlan planned;
    private final @Nullable StationAdded station;
    private final UnitSystem units;

    ReaderPresenter(@Nullable Wind wind, MotorPlan planned, @Nullable StationAdded station, UnitSystem units) {
        this.wind = wind;
        this.planned = planned;
        this.station = station;
        this.units = units;
    }

    /** What one mark is worth, in N·mm; empty while that is not known. */
    Optional<Double> division() {
        return wind != null
                ? Optional.ofNullable(wind.begun().divisionNmm())
                : Optional.ofNullable(station).map(StationAdded::divisionNmm);
    }

    /** Why the ceiling cannot be read, in words; empty when it can. */
    Optional<String> beyondMeter() {
        @Nullable Torque ceiling = planned.aim().ceilingTorque();
        return Optional.ofNullable(station)
                .map(StationAdded::fullScaleNmm)
                .filter(most -> ceiling != null && ceiling.newtonMillimetres() > most)
                .map(most -> "The ceiling lies beyond the meter, which ends at "
                        + units.torque(Torque.ofNewtonMillimetres(most)) + ": stop at the count.");
    }

    WindingView.Reader view(boolean quiet) {
        @Nullable WindingPlan plan = planned.plan();
        @Nullable WindingPlan shown = quiet ? null : plan;
        OptionalInt ceiling = wind == null ? plannedCeilingLevel() : wind.ceilingLevel();
        List<WindingPlan.Step> marks = shown == null ? List.of() : shown.floorMarks();
        return new WindingView.Reader(
                wind == null ? "" : String.valueOf(wind.begun().atMs()),
                division().map(this::perMark).orElse(""),
                units.torqueUnit(),
                shown == null ? "" : String.valueOf(shown.atFullStretchCrankTurns()),
                shown == null ? "" : String.valueOf(shown.targetCrankTurns()),
                ceiling.isPresent() && !quiet ? String.valueOf(ceiling.getAsInt()) : "",
                marks.stream().map(s -> String.valueOf(s.crankTurns())).collect(Collectors.joining(",")),
                marks.stream().map(s -> units.length(s.distance())).collect(Collectors.joining("|")),
                planned.request() == null || quiet
                        ? ""
                        : String.valueOf(planned.request().backOff()),
                quiet ? "" : ceilingWords(),
                quiet || planned.aim().launch() == null ? "" : planned.aim().launchWords(units),
                told());
    }

    /** The ceiling that the wind was begun with; one that is set later is for the next. */
    private String ceilingWords() {
        if (wind == null) {
            return planned.aim().ceilingTorque() == null ? "" : planned.aim().ceilingWords(units);
        }
        Double begun = wind.begun().ceilingNmm();
        return begun == null ? "" : units.torque(Torque.ofNewtonMillimetres(begun));
    }

    /** Before the first crank turn: the reader's keys must know it even when nobody answers from then on. */
    private OptionalInt plannedCeilingLevel() {
        Double division = division().orElse(null);
        return division == null
                ? OptionalInt.empty()
                : WindActions.ceiling(planned, station)
                        .map(c -> OptionalInt.of(Wind.levelOf(c.newtonMillimetres(), division)))
                        .orElse(OptionalInt.empty());
    }

    /** How far the wind has come, for a device that goes on with it. */
    private WindingView.Told told() {
        if (wind == null) {
            return new WindingView.Told("0", "winding", "", 0);
        }
        String phase = switch (wind.phase()) {
            case WINDING_AT_FULL_STRETCH -> "winding";
            case WALKING_IN -> WindPhase.STEPPING_IN;
            case STOPPED -> WindPhase.STOPPED;
            case HOLDING -> WindPhase.BACKED_OFF;
            case BROKE -> WindPhase.BROKE;
            case OFF_METER -> WindPhase.OFF_METER;
        };
        String in = wind.phases().stream()
                .filter(p -> p.phase().equals(WindPhase.STEPPING_IN))
                .map(p -> String.valueOf(p.elapsedMs()))
                .findFirst()
                .orElse("");
        return new WindingView.Told(
                String.valueOf(wind.level(Long.MAX_VALUE)),
                phase,
                in,
                wind.phases().size());
    }

    private String perMark(double nmm) {
        return String.format(Locale.ROOT, "%.6f", units.torqueNumber(Torque.ofNewtonMillimetres(nmm)));
    }
}
