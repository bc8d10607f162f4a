package org.skeinday.bench.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.FullHands;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.attempt.store.WoundAlone;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.attempt.web.WindingPlaces;
import org.skeinday.bench.action.WindAlone;
import org.skeinday.contest.StationAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.StopRule;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.store.WindStore;

/** One motor that is wound without an attempt, as its page shows it. */
final class WindAlonePresenter {
    private final Tx tx;
    private final MotorLife life;
    private final UnitSystem units;
    private final long nowMs;
    private final List<Wind> winds;

    WindAlonePresenter(Tx tx, MotorLife life, UnitSystem units, long nowMs) {
        this.tx = tx;
        this.life = life;
        this.units = units;
        this.nowMs = nowMs;
        this.winds = WindStore.alone(tx, life.motor().id());
    }

    /** What is left of a motor is off the hooks, or another device than the reader's asks: its turns can be told. */
    static boolean isBrokenAndCleared(Wind wind, String device) {
        return wind.broke().isPresent()
                && (wind.phase() == Wind.Phase.OFF_METER
                        || !wind.begun().device().equals(device));
    }

    /**
     * What was asked for by the page's address.
     *
     * @param stop what is to end a wind that is not begun yet
     * @param past id of a wind that nobody asks about any more; empty for none
     * @param place id of the winding place; empty for the one at work
     */
    record Asked(StopRule stop, String past, String place) {
        String query(StopRule ends) {
            return "?stop=" + ends.word() + (past.isEmpty() ? "" : "&past=" + past)
                    + (place.isEmpty() ? "" : "&place=" + place);
        }

        Asked at(String other) {
            return new Asked(stop, past, other);
        }
    }

    AloneView view(
            Viewer viewer, Asked asked, BenchView.Row row, ZoneId zone, FormErrors form, UnaryOperator<String> nameOf) {
        @Nullable Wind wind = shown(asked.past());
        StopRule stop = wind == null ? asked.stop() : wind.begun().stopRule();
        boolean breaking = stop == StopRule.BREAKING;
        Optional<StationAdded> at = place(asked, wind);
        MotorPlan planned = WindingPresenter.orNone(() -> WindAlone.plan(tx, life.motor(), uses(wind), at));
        var of = new WindingPresenter(tx, null, life, wind, units, planned, at.orElse(null));
        var about = new WindingPresenter.About(
                "Motor " + life.motor().tag() + (breaking ? ", wound until it breaks" : ", without an attempt"),
                "",
                wind == null ? WindAlone.whyNot(tx, life).orElse("") : "",
                lines(of.lines(!breaking), planned, breaking, at),
                wind != null && (isOver(wind) || isBrokenAndCleared(wind, viewer.device())),
                Speaks.NOBODY_NAMED,
                FullHands.FREE,
                nameOf);
        String address = "/winding/motor/" + life.motor().id();
        return new AloneView(
                of.view(about, viewer.device(), viewer.quiet(), nowMs, form),
                row,
                life.motor().batchId(),
                address,
                address + "/part" + asked.query(stop),
                stop,
                winds.stream().filter(this::isOver).map(w -> w.begun().id()).collect(Collectors.joining(" ")),
                again(wind, address),
                wind == null ? others(asked, address, at) : List.of(),
                past(zone),
                new WindQuestions(tx, zone).ofMotor(winds),
                form.message("judge"));
    }

    /** Where it is wound; one that was asked for and is prepared no more gives way to the one at work. */
    private Optional<StationAdded> place(Asked asked, @Nullable Wind wind) {
        return wind != null && wind.begun().stationId() != null
                ? WoundPlace.of(tx, null, wind)
                : WindAlone.place(tx, asked.place().isEmpty() ? null : asked.place())
                        .or(() -> WindAlone.place(tx, null));
    }

    /** Where else it could be wound, each with the address of this page there. */
    private List<AloneView.Elsewhere> others(Asked asked, String address, Optional<StationAdded> at) {
        return WindingPlaces.all(tx, nowMs).stream()
                .filter(choice ->
                        at.filter(place -> place.id().equals(choice.id())).isEmpty())
                .map(choice -> new AloneView.Elsewhere(
                        choice.words(), address + asked.at(choice.id()).query(asked.stop())))
                .toList();
    }

    /** Before the wind that is shown, else until now. */
    private int uses(@Nullable Wind wind) {
        String motor = life.motor().id();
        MotorUses uses = MotorUseStore.all(tx);
        return wind == null ? uses.of(motor) : uses.before(motor, wind.begun().id());
    }

    /** Who looks: the device, and whether nobody may be helped now. */
    record Viewer(String device, boolean quiet) {}

    /** The wind under way, or the last one while something is left to say or to do about it. */
    private @Nullable Wind shown(String past) {
        if (winds.isEmpty()) {
            return null;
        }
        Wind last = winds.get(winds.size() - 1);
        if (!isOver(last)) {
            return last;
        }
        boolean asked = last.counted() == null && !last.begun().id().equals(past);
        boolean hangs = life.stage().isLoaded() && isLatestUse(last);
        return asked || hangs || life.stage() == MotorStage.BROKEN ? last : null;
    }

    /** Not loaded by an attempt since. */
    private boolean isLatestUse(Wind last) {
        List<Wind> all = WindStore.ofMotor(tx, life.motor().id());
        return all.get(all.size() - 1).begun().id().equals(last.begun().id());
    }

    private boolean isOver(Wind wind) {
        boolean runBack = wind.phase().compareTo(Wind.Phase.STOPPED) >= 0
                && wind.broke().isEmpty()
                && !life.stage().isLoaded();
        return wind.phase() == Wind.Phase.OFF_METER
                || runBack
                || wind.counted() != null
                || nowMs - wind.begun().atMs() > WoundAlone.FORGOTTEN_MS;
    }

    private String again(@Nullable Wind wind, String address) {
        return wind == null
                        || !isOver(wind)
                        || wind.counted() != null
                        || WindAlone.whyNot(tx, life).isPresent()
                ? ""
                : address + "?past=" + wind.begun().id();
    }

    /** Where and for which model, and where the wind ends when it ends with a break. */
    private List<BenchView.Line> lines(
            List<BenchView.Line> plan, MotorPlan planned, boolean breaking, Optional<StationAdded> at) {
        List<BenchView.Line> lines = new ArrayList<>(plan);
        at.flatMap(place -> WindingPlaces.line(tx, place))
                .ifPresent(line -> lines.add(new BenchView.Line(line.label(), line.value())));
        if (planned.request() != null) {
            lines.add(new BenchView.Line(
                    "finish for",
                    WindAlone.model(tx, life.motor())
                            .map(m -> m.name())
                            .orElse("no model of its team alone: the usual share of its length")));
            if (breaking) {
                double turns = planned.request().breakingTurns().doubleValue()
                        / planned.request().ratio().doubleValue();
                lines.add(new BenchView.Line(
                        "stop", "when it breaks; what is known says at about " + Math.round(turns) + " crank turns"));
            }
        }
        return lines;
    }

    private List<BenchView.Line> past(ZoneId zone) {
        List<BenchView.Line> lines = new ArrayList<>();
        for (Wind wind : winds) {
            WindCounted counted = wind.counted();
            if (counted != null) {
                lines.add(0, new BenchView.Line(PageWords.clock(wind.begun().atMs(), zone), words(wind, counted)));
            }
        }
        return lines;
    }

    private String words(Wind wind, WindCounted counted) {
        String torque = wind.peakTorque().map(t -> ", up to " + units.torque(t)).orElse("");
        return counted.stopCrankTurns() + " crank turns" + torque
                + (wind.broke().isPresent() ? ", broke" : "") + (wind.paced() ? ", paced: kept out of fits" : "");
    }

    static boolean quiet(Tx tx) {
        return AttemptStore.quietNow(tx).isPresent();
    }
}
