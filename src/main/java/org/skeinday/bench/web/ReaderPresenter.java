package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.bench.action.BeginWind;
import org.skeinday.contest.StationAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.WindingPlan;
import org.skeinday.winding.store.WindStore;

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

    /** What is not known of the meter or the plan, as sentences. @param quiet while no advice may be given */
    List<String> lacks(@Nullable WindingPlan plan, boolean quiet) {
        List<String> lacks = new ArrayList<>();
        if (division().isEmpty()) {
            lacks.add(
                    "What one division of the meter is worth is not known: divisions are counted, no torque is computed. Enter"
                            + " it in Prepare, page Winding places.");
        }
        if (plan == null) {
            lacks.add("No turns limit, no floor marks: " + planned.why() + ".");
        }
        if (!quiet) {
            beyondMeter().ifPresent(lacks::add);
        }
        return lacks;
    }

    /** Why the torque limit cannot be read, in words; empty when it can. */
    private Optional<String> beyondMeter() {
        @Nullable Torque ceiling = planned.aim().ceilingTorque();
        return Optional.ofNullable(station)
                .map(StationAdded::fullScaleNmm)
                .filter(most -> ceiling != null && ceiling.newtonMillimetres() > most)
                .map(most -> "The torque limit lies beyond the meter, which ends at "
                        + units.torque(Torque.ofNewtonMillimetres(most)) + ": the turns limit ends the wind.");
    }

    /** @param speaks who speaks to whom */
    WindingView.Reader view(boolean quiet, String speaks, WindingView.Crank crank, WindingView.Told told) {
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
                quiet ? "" : launchDivision(),
                meterEnds(),
                quiet ? "" : new LimitWords(wind, planned, units, ceiling).words(),
                speaks,
                crank,
                told);
    }

    /** The division that is wanted at launch, as it is printed; where that is not known, the torque. */
    private String launchDivision() {
        @Nullable Torque launch = planned.aim().launch();
        return launch == null
                ? ""
                : division()
                        .map(d -> String.valueOf(Wind.levelOf(launch.newtonMillimetres(), d)))
                        .orElseGet(() -> planned.aim().launchWords(units));
    }

    /** The meter's last division; empty while nobody has said where its scale ends. */
    private String meterEnds() {
        return Optional.ofNullable(station)
                .map(StationAdded::fullScaleNmm)
                .flatMap(most -> division().map(d -> String.valueOf(Wind.levelOf(most, d))))
                .orElse("");
    }

    /** Before the first crank turn: the reader's keys must know it even when nobody answers from then on. */
    private OptionalInt plannedCeilingLevel() {
        Double division = division().orElse(null);
        return division == null
                ? OptionalInt.empty()
                : BeginWind.ceiling(planned, station)
                        .map(c -> OptionalInt.of(Wind.levelOf(c.newtonMillimetres(), division)))
                        .orElse(OptionalInt.empty());
    }

    /** How far the wind has come, for a device that goes on with it. @param broke whether its attempt says so, off the meter too */
    WindingView.Told told(Tx tx, boolean broke) {
        if (wind == null) {
            return new WindingView.Told("0", "winding", "", 0, "");
        }
        String phase = broke && wind.broke().isEmpty()
                ? WindPhase.BROKE
                : switch (wind.phase()) {
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
                WindStore.told(tx, wind),
                wind.floorMark().isPresent() ? String.valueOf(wind.floorMark().getAsInt()) : "");
    }

    private String perMark(double nmm) {
        return String.format(Locale.ROOT, "%.6f", units.torqueNumber(Torque.ofNewtonMillimetres(nmm)));
    }
}
