package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.bench.action.WindDeeds;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.motor.MotorLife;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Doubts;
import org.skeinday.winding.FloorMark;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.WindingPlan;
import org.skeinday.winding.store.WindStore;

/** One motor's winding as the page shows it, for an attempt or without one. */
final class WindingOf {
    private final Tx tx;
    private final @Nullable AttemptNow attempt;
    private final MotorLife life;
    private final @Nullable Wind wind;
    private final UnitSystem units;
    private final MotorPlan planned;
    private final @Nullable WindingPlan plan;

    WindingOf(Tx tx, AttemptNow attempt, MotorLife life, @Nullable Wind wind, UnitSystem units) {
        this(tx, attempt, life, wind, units, WindDeeds.plan(tx, attempt, life.motor()));
    }

    /** @param attempt null for a motor that is wound without one */
    WindingOf(
            Tx tx,
            @Nullable AttemptNow attempt,
            MotorLife life,
            @Nullable Wind wind,
            UnitSystem units,
            MotorPlan planned) {
        this.tx = tx;
        this.attempt = attempt;
        this.life = life;
        this.wind = wind;
        this.units = units;
        this.planned = planned;
        this.plan = planned.plan();
    }

    /**
     * What the page is about.
     *
     * @param attempt empty for a motor that is wound without one
     * @param problem why the motor must not be wound, empty when it may
     * @param over whether its turns are asked for
     */
    record About(String title, String attempt, String problem, List<BenchView.Line> plan, boolean over) {}

    /** @param device that asks @param quiet whether nobody may be helped now */
    WindingView view(String device, boolean quiet, long nowMs, FormErrors form) {
        AttemptNow flown = Objects.requireNonNull(attempt);
        String entry = EntryStore.find(tx, flown.entryId()).orElseThrow().name();
        var about = new About(
                entry + ", attempt " + flown.number() + " · motor "
                        + life.motor().tag(),
                flown.id(),
                flown.state().isBeforeRelease() ? problem(flown) : "",
                lines(),
                !flown.state().isBeforeRelease() || wind != null && AloneOf.isBrokenAndCleared(wind, device));
        return view(about, device, quiet, nowMs, form);
    }

    WindingView view(About about, String device, boolean quiet, long nowMs, FormErrors form) {
        boolean own = wind == null || wind.begun().device().equals(device);
        boolean over = about.over();
        return new WindingView(
                about.title(),
                "",
                about.attempt(),
                about.problem(),
                life.motor().direction().equals("cw")
                        ? "↻ clockwise from the winder"
                        : "↺ anticlockwise from the winder",
                quiet ? List.of() : about.plan(),
                quiet ? List.of() : floor(),
                lacks(quiet),
                life.motor().id(),
                wind == null ? "" : wind.begun().id(),
                own,
                quiet,
                over,
                wind == null || own || quiet || over ? null : live(wind, nowMs),
                reader(quiet),
                wind != null && over && (!quiet || own) ? after(wind, form) : null,
                more(own, over, quiet, nowMs, form),
                form);
    }

    private WindingView.More more(boolean own, boolean over, boolean quiet, long nowMs, FormErrors form) {
        var beside = new BesideWinding(tx, life, wind, units, planned.aim());
        @Nullable AttemptNow flown = attempt;
        boolean before = flown != null && flown.state().isBeforeRelease();
        boolean shows = wind != null && !quiet && (over || !own);
        return new WindingView.More(
                flown != null && !before && (!quiet || own)
                        ? new FlightOf(tx, flown, units).view(wind == null, quiet, form)
                        : null,
                shows ? beside.picture() : null,
                flown != null && before && !quiet && (wind == null || !own) ? beside.aims(flown.id(), form) : null,
                flown != null && before && (wind == null || !about(life)) ? beside.spares(flown) : List.of(),
                List.of(),
                wind == null || over ? new WindingView.Hold(0, "") : beside.hold(quiet, nowMs),
                "");
    }

    /** Whether it can go on with this motor. */
    private static boolean about(MotorLife life) {
        return life.whyNotFlown().isEmpty();
    }

    /** Nothing is said of the direction once it is being wound; of a break the reader's keys and the counts speak. */
    private String problem(AttemptNow flown) {
        if (wind != null && wind.broke().isPresent()) {
            return "";
        }
        return life.whyNotFlown().orElse(wind == null ? wrongWay(flown) : "");
    }

    private String wrongWay(AttemptNow flown) {
        return Optional.ofNullable(flown.modelId())
                .flatMap(id -> ModelStore.find(tx, id))
                .filter(m -> !m.direction().equals(life.motor().direction()))
                .map(m -> "This motor turns the other way than " + m.name()
                        + ": wound so, the rotor drives down. The captain calls another motor.")
                .orElse("");
    }

    List<BenchView.Line> lines() {
        if (plan == null || planned.request() == null) {
            return List.of(new BenchView.Line("winding plan", planned.why()));
        }
        return List.of(
                new BenchView.Line("start at", units.length(plan.fullStretch()) + " hook to hook"),
                new BenchView.Line("at full stretch", plan.atFullStretchCrankTurns() + " crank turns"),
                new BenchView.Line("stop at", plan.targetCrankTurns() + " crank turns"),
                new BenchView.Line("ceiling", planned.aim().ceilingWords(units)),
                new BenchView.Line("launch torque wanted", planned.aim().launchWords(units)),
                new BenchView.Line("back off", planned.request().backOff() + " crank turns at least"),
                new BenchView.Line("finish at", units.length(plan.finish())));
    }

    private List<WindingView.FloorMark> floor() {
        List<WindingView.FloorMark> marks = new ArrayList<>();
        if (plan != null) {
            plan.floorMarks()
                    .forEach(step -> marks.add(new WindingView.FloorMark(
                            marks.size() + 1, String.valueOf(step.crankTurns()), units.length(step.distance()))));
        }
        return marks;
    }

    private Optional<Double> division() {
        return wind == null
                ? StationStore.atWork(tx).map(StationAdded::divisionNmm)
                : Optional.ofNullable(wind.begun().divisionNmm());
    }

    private List<String> lacks(boolean quiet) {
        List<String> lacks = new ArrayList<>();
        if (division().isEmpty()) {
            lacks.add(
                    "What one mark of the meter is worth is not known: marks are counted, no torque is computed. Enter"
                            + " it in Prepare, page Winding places.");
        }
        if (plan == null) {
            lacks.add("No count to stop at, no floor marks: " + planned.why() + ".");
        }
        if (!quiet) {
            beyondMeter().ifPresent(lacks::add);
        }
        return lacks;
    }

    private Optional<String> beyondMeter() {
        @Nullable Torque ceiling = planned.aim().ceilingTorque();
        return StationStore.atWork(tx)
                .flatMap(s -> Optional.ofNullable(s.fullScaleNmm()))
                .filter(most -> ceiling != null && ceiling.newtonMillimetres() > most)
                .map(most -> "The ceiling lies beyond the meter, which ends at "
                        + units.torque(Torque.ofNewtonMillimetres(most)) + ": stop at the count.");
    }

    private WindingView.Live live(Wind now, long nowMs) {
        long elapsed = Math.max(0, nowMs - now.begun().atMs());
        int level = now.level(elapsed);
        String mark = plan == null
                ? ""
                : now.count(elapsed)
                        .map(c -> FloorMark.at(c.crankTurns(), plan))
                        .map(m -> "mark " + m.number() + " · " + units.length(m.distance()))
                        .orElse("");
        String phase = switch (now.phase()) {
            case WINDING_AT_FULL_STRETCH -> "winding at full stretch";
            case WALKING_IN -> "walking in";
            case STOPPED -> "stopped, backing off";
            case HOLDING -> "holding";
            case BROKE -> "the motor broke";
            case OFF_METER -> "off the meter";
        };
        return new WindingView.Live(torque(now, level), now.word(elapsed).text(), mark, phase, near(now, level));
    }

    /** How near the ceiling is, as torque and marks; empty while it is not known or nothing is put on any more. */
    private String near(Wind now, int level) {
        @Nullable Double ceiling = now.begun().ceilingNmm();
        OptionalInt last = now.ceilingLevel();
        return ceiling == null || last.isEmpty() || now.phase().compareTo(Wind.Phase.STOPPED) >= 0
                ? ""
                : "ceiling " + units.torque(Torque.ofNewtonMillimetres(ceiling)) + ", "
                        + toGo(Math.max(0, last.getAsInt() - level));
    }

    private static String toGo(int marks) {
        return marks + (marks == 1 ? " mark" : " marks") + " to go";
    }

    private String torque(Wind now, int level) {
        return now.torque(level).map(units::torque).orElse(level + (level == 1 ? " mark" : " marks"));
    }

    private WindingView.Reader reader(boolean quiet) {
        @Nullable WindingPlan shown = quiet ? null : plan;
        OptionalInt ceiling = wind == null ? plannedCeilingLevel() : wind.ceilingLevel();
        List<WindingPlan.Step> marks = shown == null ? List.of() : shown.floorMarks();
        return new WindingView.Reader(
                wind == null ? "" : String.valueOf(wind.begun().atMs()),
                division().map(this::perMark).orElse(""),
                units == UnitSystem.METRIC ? "mN·m" : "in·ozf",
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
        @Nullable Torque ceiling = planned.aim().ceilingTorque();
        Double division = division().orElse(null);
        return ceiling == null || division == null || beyondMeter().isPresent()
                ? OptionalInt.empty()
                : OptionalInt.of(Wind.levelOf(ceiling.newtonMillimetres(), division));
    }

    /** How far the wind has come, for a device that goes on with it. */
    private WindingView.Told told() {
        if (wind == null) {
            return new WindingView.Told("0", "winding", "");
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
        return new WindingView.Told(String.valueOf(wind.level(Long.MAX_VALUE)), phase, in);
    }

    private String perMark(double nmm) {
        Torque one = Torque.ofNewtonMillimetres(nmm);
        return String.format(
                Locale.ROOT, "%.6f", units == UnitSystem.METRIC ? one.newtonMillimetres() : one.inchOunces());
    }

    private WindingView.After after(Wind done, FormErrors form) {
        @Nullable WindCounted counted = done.counted();
        var planned = PlannedCounts.of(tx, done);
        Set<String> confirmed = WindStore.confirmed(tx, done.begun().id());
        List<BenchView.Line> figures = new ArrayList<>();
        done.peakLevel().ifPresent(l -> figures.add(new BenchView.Line("highest torque", torque(done, l))));
        done.launchLevel().ifPresent(l -> figures.add(new BenchView.Line("at launch", torque(done, l))));
        beside(done).wanted(done).ifPresent(words -> figures.add(new BenchView.Line("against what was wanted", words)));
        done.launchMotorTurns()
                .ifPresent(t -> figures.add(new BenchView.Line("launched with", Math.round(t) + " motor turns")));
        done.breakTorque().ifPresent(t -> figures.add(new BenchView.Line("just before it broke", units.torque(t))));
        done.breakMotorTurns()
                .ifPresent(t -> figures.add(new BenchView.Line("broke at", Math.round(t) + " motor turns")));
        return new WindingView.After(
                form.typedOr("atFull", first(counted == null ? null : counted.atFullCrankTurns(), planned.atFull())),
                form.typedOr("stop", first(counted == null ? null : counted.stopCrankTurns(), planned.stop())),
                form.typedOr("backOff", backOff(done, counted)),
                counted != null,
                Doubts.of(done, beside(done).band()).stream()
                        .filter(d -> !confirmed.contains(d.markId()))
                        .map(d -> new WindingView.DoubtLine(d.markId(), d.words()))
                        .toList(),
                figures,
                planned.lead(),
                done.broke().isPresent(),
                form);
    }

    private BesideWinding beside(Wind done) {
        return new BesideWinding(tx, life, done, units, planned.aim());
    }

    private static String backOff(Wind done, @Nullable WindCounted counted) {
        Double said = counted == null ? null : counted.backOffCrankTurns();
        return said == null ? String.valueOf(done.begun().backOffCrankTurns()) : FlightOf.number(said);
    }

    private static String first(@Nullable Integer one, @Nullable Integer other) {
        return one != null ? String.valueOf(one) : other != null ? String.valueOf(other) : "";
    }
}
