package org.skeinday.bench.web;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.FullHands;
import org.skeinday.attempt.Hands;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.attempt.store.HandsAtMotor;
import org.skeinday.attempt.web.Strips;
import org.skeinday.attempt.web.WhoDoesWhat;
import org.skeinday.attempt.web.WindingPlaces;
import org.skeinday.bench.action.BeginWind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.steps.web.GateView;
import org.skeinday.units.UnitSystem;
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
    private final @Nullable StationAdded station;
    private final ReaderPresenter reader;

    /** @param wind of its present motor, null before the first crank turn and where nobody reads */
    WindingPresenter(Tx tx, AttemptEvidence known, MotorLife life, @Nullable Wind wind, UnitSystem units) {
        this(
                tx,
                known,
                life,
                wind,
                units,
                orNone(() -> BeginWind.plan(tx, known.now(), life.motor(), WoundPlace.of(tx, known.now(), wind))),
                Apart.made(
                        "What the winding place says",
                        () -> WoundPlace.of(tx, known.now(), wind).orElse(null),
                        words -> null));
    }

    /** Without a plan the keys and counts stand all the same. */
    static MotorPlan orNone(Supplier<MotorPlan> planning) {
        return Apart.made(
                "The winding plan",
                planning,
                words -> MotorPlan.none("it cannot be computed just now, the log has the reason"));
    }

    /** @param known null for a motor that is wound without an attempt @param station where it is wound, or is to be */
    WindingPresenter(
            Tx tx,
            @Nullable AttemptEvidence known,
            MotorLife life,
            @Nullable Wind wind,
            UnitSystem units,
            MotorPlan planned,
            @Nullable StationAdded station) {
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
        this.units = station == null ? units : station.units(units);
        this.planned = planned;
        this.plan = planned.plan();
        this.beside = new BesideWinding(tx, life, wind, this.units, planned.aim());
        this.station = station;
        this.reader = new ReaderPresenter(wind, planned, station, this.units);
    }

    /**
     * What the page is about.
     *
     * @param attempt empty for a motor that is wound without one
     * @param problem why the motor must not be wound, empty when it may
     * @param over whether its turns are asked for
     * @param hands of whoever asks, on a device of their own
     * @param nameOf display name of a person's id
     */
    record About(
            String title,
            String attempt,
            String problem,
            List<BenchView.Line> plan,
            boolean over,
            Speaks speaks,
            FullHands hands,
            UnaryOperator<String> nameOf) {}

    /** @param asks which device @param quiet whether nobody may be helped now @param people who does what, as on Now */
    WindingView view(
            Caller asks,
            boolean quiet,
            List<BenchView.Line> people,
            long nowMs,
            FormErrors form,
            UnaryOperator<String> nameOf) {
        AttemptNow flown = Objects.requireNonNull(attempt);
        EntryAdded team = EntryStore.find(tx, flown.entryId()).orElseThrow();
        String entry = team.name();
        FullHands hands = at == null ? FullHands.FREE : HandsAtMotor.of(tx, at, asks.person());
        WhoDoesWhat who = WhoDoesWhat.of(tx, team, flown.number(), nameOf);
        var about = new About(
                entry + ", " + flown.number().words() + " · motor "
                        + life.motor().tag(),
                flown.id(),
                isToFly() ? problem(flown) : "",
                Stream.concat(lines().stream(), people.stream()).toList(),
                !isToFly() || wind != null && isBrokenAndCleared(wind),
                new Speaks(who.named("reads"), who.named("winds")),
                hands,
                nameOf);
        // without its keys it sees what the others see
        return view(about, hands.hasKeys() ? asks.device() : "", quiet, nowMs, form);
    }

    WindingView view(About about, String device, boolean quiet, long nowMs, FormErrors form) {
        boolean own = wind == null || wind.begun().device().equals(device);
        boolean over = about.over();
        return new WindingView(
                about.title(),
                "",
                about.attempt(),
                about.problem(),
                life.motor().turns().arrow() + " hook turns "
                        + life.motor().turns().words() + ", seen from the winder",
                quiet ? List.of() : about.plan(),
                quiet ? List.of() : new PlanOfWind(planned, units).floor(),
                reader.lacks(plan, quiet),
                life.motor().id(),
                wind == null ? "" : wind.begun().id(),
                own,
                quiet,
                over,
                wind == null || own || quiet || over ? null : new FollowerWords(wind, plan, units).at(nowMs, device),
                reader.view(
                        quiet,
                        about.speaks().words(),
                        new CrankWords(life.motor().turns(), station, about.nameOf()).view(),
                        reader.told(tx, isBroken())),
                wind != null && over && (!quiet || own) ? AfterWindPresenter.view(tx, wind, beside, units, form) : null,
                more(own, over, quiet, nowMs, form),
                at == null
                        ? WindingView.At.NOWHERE
                        : new WindingView.At(
                                Strips.of(at),
                                runBack,
                                comesFirst(at.phase()),
                                unreadBreak(),
                                about.hands(),
                                isReaderBound(at)),
                form);
    }

    private boolean isReaderBound(LiveAttempt live) {
        return wind != null && HandsAtMotor.isReaderBound(tx, live, wind.begun().device());
    }

    private String unreadBreak() {
        return wind != null || !isBroken()
                ? ""
                : Apart.made(
                        "At how many turns it broke",
                        () -> MotorLifeStore.breakOf(tx, life.motor().id())
                                .filter(step -> step.motorTurns() == null)
                                .map(MotorStep::id)
                                .orElse(""),
                        words -> "");
    }

    private Optional<Long> heldSince() {
        return at != null && at.phase() instanceof AttemptPhase.Holding held
                ? Optional.of(held.sinceMs())
                : Optional.empty();
    }

    /** Its motor broke, also once it hangs off the meter. */
    private boolean isBroken() {
        return at != null && at.phase() instanceof AttemptPhase.Broke;
    }

    /** People after a break, then where it parted; turns that are still on. */
    private static boolean comesFirst(AttemptPhase phase) {
        return phase instanceof AttemptPhase.Broke broke
                ? broke.where() == null
                : phase.name().isUrgent();
    }

    private boolean isToFly() {
        return at != null && at.isToFly();
    }

    /** As soon as anybody says that everyone is unhurt, its turns can be told. */
    private boolean isBrokenAndCleared(Wind broken) {
        boolean safe = at != null && at.phase() instanceof AttemptPhase.Broke broke && broke.peopleSafe();
        return broken.broke().isPresent() && safe;
    }

    private WindingView.More more(boolean own, boolean over, boolean quiet, long nowMs, FormErrors form) {
        @Nullable AttemptNow flown = attempt;
        boolean before = at != null && at.phase().name().isBeforeRelease();
        boolean flew = at != null && at.phase().name().hasFlown();
        boolean shows = wind != null && !quiet && (over || !own);
        return new WindingView.More(
                flown != null && at != null && flew && (!quiet || own)
                        ? new FlightPresenter(tx, flown, at.phase().name(), units).view(wind == null, quiet, form)
                        : null,
                shows ? beside.picture() : null,
                flown != null && before && !quiet && (wind == null || !own) ? beside.aims(flown.id(), form) : null,
                flown != null && at != null && AttemptActs.of(at, Hands.READER).contains(AttemptAct.TAKE_SPARE)
                        ? beside.spares(flown)
                        : List.of(),
                before && flown != null && at != null ? WindingPlaces.of(tx, flown, at, nowMs) : WindingPlaces.ONE,
                List.of(),
                wind == null || over ? new WindingView.Hold(0, "") : beside.hold(heldSince(), quiet, nowMs),
                "",
                "",
                flown != null && at != null && wind == null && at.phase().name() == AttemptPhase.Name.CALLED
                        ? GateView.of(WindingGate.of(tx, flown))
                        : GateView.OPEN,
                List.of(),
                "",
                List.of());
    }

    /** Nothing is said of the direction once it is being wound; of a break the reader's keys and the counts speak. */
    private String problem(AttemptNow flown) {
        if (wind != null && wind.broke().isPresent()) {
            return "";
        }
        if (isBroken()) {
            return life.motor().tag() + " broke. For this attempt another motor is taken.";
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

    /** @param stops false for a wind that goes on until the motor breaks */
    List<BenchView.Line> lines(boolean stops) {
        return new PlanOfWind(planned, units).lines(stops);
    }
}
