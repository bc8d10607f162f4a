package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.Hands;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.State;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.attempt.web.Strips;
import org.skeinday.bench.action.WindActions;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.motor.MotorLife;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.steps.web.GateView;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.FloorMark;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindingPlan;

/** One motor's winding as the page shows it, for an attempt or without one. */
final class WindingPresenter {
    private final Tx tx;
    private final @Nullable AttemptNow attempt;
    private final @Nullable LiveAttempt at;
    private final String runBack;
    private final MotorLife life;
    private final @Nullable Wind wind;
    private final UnitSystem units;
    private final MotorPlan planned;
    private final @Nullable WindingPlan plan;
    private final BesideWinding beside;
    private final ReaderPresenter reader;

    /** @param wind of its present motor, null before the first crank turn and where nobody reads */
    WindingPresenter(Tx tx, AttemptEvidence known, MotorLife life, @Nullable Wind wind, UnitSystem units) {
        this(tx, known, life, wind, units, orNone(() -> WindActions.plan(tx, known.now(), life.motor())));
    }

    /** Without a plan the keys and counts stand all the same. */
    static MotorPlan orNone(Supplier<MotorPlan> planning) {
        return Apart.made(
                "The winding plan",
                planning,
                words -> MotorPlan.none("it cannot be computed just now, the log has the reason"));
    }

    /** @param known null for a motor that is wound without an attempt */
    WindingPresenter(
            Tx tx,
            @Nullable AttemptEvidence known,
            MotorLife life,
            @Nullable Wind wind,
            UnitSystem units,
            MotorPlan planned) {
        this.tx = tx;
        this.attempt = known == null ? null : known.now();
        this.at = known == null ? null : LiveAttempt.of(known);
        this.runBack = known == null
                ? ""
                : known.runBacks().stream()
                        .map(TurnsRunBack::windId)
                        .filter(Objects::nonNull)
                        .collect(Collectors.joining(" "));
        this.life = life;
        this.wind = wind;
        this.units = units;
        this.planned = planned;
        this.plan = planned.plan();
        this.beside = new BesideWinding(tx, life, wind, units, planned.aim());
        this.reader = new ReaderPresenter(wind, planned, station(), units);
    }

    private @Nullable StationAdded station() {
        return Apart.made(
                "What the winding place says", () -> StationStore.atWork(tx).orElse(null), words -> null);
    }

    /**
     * What the page is about.
     *
     * @param attempt empty for a motor that is wound without one
     * @param problem why the motor must not be wound, empty when it may
     * @param over whether its turns are asked for
     */
    record About(String title, String attempt, String problem, List<BenchView.Line> plan, boolean over) {}

    /** @param device that asks @param quiet whether nobody may be helped now @param people who does what, as on Now */
    WindingView view(String device, boolean quiet, List<BenchView.Line> people, long nowMs, FormErrors form) {
        AttemptNow flown = Objects.requireNonNull(attempt);
        String entry = EntryStore.find(tx, flown.entryId()).orElseThrow().name();
        var about = new About(
                entry + ", " + flown.number().words() + " · motor "
                        + life.motor().tag(),
                flown.id(),
                flown.state().isBeforeRelease() ? problem(flown) : "",
                Stream.concat(lines().stream(), people.stream()).toList(),
                !flown.state().isBeforeRelease() || wind != null && isBrokenAndCleared(wind));
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
                life.motor().turns().withArrow() + " from the winder",
                quiet ? List.of() : about.plan(),
                quiet ? List.of() : floor(),
                lacks(quiet),
                life.motor().id(),
                wind == null ? "" : wind.begun().id(),
                own,
                quiet,
                over,
                wind == null || own || quiet || over ? null : live(wind, nowMs),
                reader.view(quiet),
                wind != null && over && (!quiet || own) ? AfterWindPresenter.view(tx, wind, beside, units, form) : null,
                more(own, over, quiet, nowMs, form),
                at == null
                        ? WindingView.At.NOWHERE
                        : new WindingView.At(Strips.of(at), runBack, comesFirst(at.phase())),
                form);
    }

    /** People after a break, then where it parted; turns that are still on. */
    private static boolean comesFirst(AttemptPhase phase) {
        return phase instanceof AttemptPhase.Broke broke
                ? broke.where() == null
                : phase.name().isUrgent();
    }

    /** As soon as anybody says that everyone is unhurt, its turns can be told. */
    private boolean isBrokenAndCleared(Wind broken) {
        boolean safe = at != null && at.phase() instanceof AttemptPhase.Broke broke && broke.peopleSafe();
        return broken.broke().isPresent() && safe;
    }

    private WindingView.More more(boolean own, boolean over, boolean quiet, long nowMs, FormErrors form) {
        @Nullable AttemptNow flown = attempt;
        boolean before = flown != null && flown.state().isBeforeRelease();
        boolean shows = wind != null && !quiet && (over || !own);
        return new WindingView.More(
                flown != null && !before && (!quiet || own)
                        ? new FlightPresenter(tx, flown, units).view(wind == null, quiet, form)
                        : null,
                shows ? beside.picture() : null,
                flown != null && before && !quiet && (wind == null || !own) ? beside.aims(flown.id(), form) : null,
                flown != null && at != null && AttemptActs.of(at, Hands.READER).contains(AttemptAct.TAKE_SPARE)
                        ? beside.spares(flown)
                        : List.of(),
                List.of(),
                wind == null || over ? new WindingView.Hold(0, "") : beside.hold(quiet, nowMs),
                "",
                "",
                flown != null && wind == null && flown.state() == State.CALLED
                        ? GateView.of(WindingGate.of(tx, flown))
                        : GateView.OPEN,
                List.of(),
                "");
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
                .filter(m -> m.turns() != life.motor().turns())
                .map(m -> "This motor turns the other way than " + m.name()
                        + ": wound so, the rotor drives down. The captain calls another motor.")
                .orElse("");
    }

    List<BenchView.Line> lines() {
        return lines(true);
    }

    /** @param stops false for a wind that goes on until the motor breaks: nothing stops it before, nothing is backed off */
    List<BenchView.Line> lines(boolean stops) {
        if (plan == null || planned.request() == null) {
            return List.of(new BenchView.Line("winding plan", planned.why()));
        }
        List<BenchView.Line> lines = new ArrayList<>();
        lines.add(new BenchView.Line("start at", units.length(plan.fullStretch()) + " hook to hook"));
        lines.add(new BenchView.Line("at full stretch", plan.atFullStretchCrankTurns() + " crank turns"));
        if (stops) {
            lines.add(new BenchView.Line("stop at", plan.targetCrankTurns() + " crank turns"));
            lines.add(new BenchView.Line("ceiling", planned.aim().ceilingWords(units)));
        }
        lines.add(new BenchView.Line("launch torque wanted", planned.aim().launchWords(units)));
        if (stops) {
            lines.add(new BenchView.Line("back off", planned.request().backOff() + " crank turns at least"));
        }
        lines.add(new BenchView.Line("finish at", units.length(plan.finish())));
        return lines;
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

    private List<String> lacks(boolean quiet) {
        List<String> lacks = new ArrayList<>();
        if (reader.division().isEmpty()) {
            lacks.add(
                    "What one mark of the meter is worth is not known: marks are counted, no torque is computed. Enter"
                            + " it in Prepare, page Winding places.");
        }
        if (plan == null) {
            lacks.add("No count to stop at, no floor marks: " + planned.why() + ".");
        }
        if (!quiet) {
            reader.beyondMeter().ifPresent(lacks::add);
        }
        return lacks;
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
        return new WindingView.Live(beside.needle(now, level), now.word(elapsed).text(), mark, phase, near(now, level));
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
}
