package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.BackwardSum;
import org.skeinday.attempt.Collision;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.Steps;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.action.Doubts;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.StepsStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.steps.Caution;
import org.skeinday.steps.Cautions;
import org.skeinday.steps.Moment;
import org.skeinday.units.UnitSystem;

/** Makes the Next attempt card: the attempt under way, or the entry that must come next. */
final class CardOf {
    /** This page looks alike for many: the full text stands where one person reads it. */
    private static final List<Cautions.Shown> BRIEF = Cautions.at(
            Moment.BEFORE_WINDING, Cautions.all().stream().map(Caution::id).collect(Collectors.toSet()));

    private final Tx tx;
    private final Today today;
    private final UnitSystem units;
    private final UnaryOperator<String> nameOf;
    private final List<Steps> steps;
    private final BackwardSum sum;
    private final ZoneId zone;

    /** @param nameOf display name of a person's id */
    CardOf(Tx tx, Today today, UnitSystem units, UnaryOperator<String> nameOf, ZoneId zone) {
        this.tx = tx;
        this.today = today;
        this.units = units;
        this.nameOf = nameOf;
        this.zone = zone;
        this.steps = StepsStore.ofOwn(tx);
        boolean landing = today.rules().inside().equals("landing");
        this.sum = Apart.made(
                "How long own attempts took",
                () -> new BackwardSum(Estimate.ofAttempts(steps), landing),
                words -> new BackwardSum(Estimate.ofAttempts(List.of()), landing));
    }

    /** @param chosen id of the attempt to show while it is open; any other, for the one called last */
    NowView.@Nullable Card card(long nowMs, String chosen) {
        Optional<AttemptNow> open = today.attempts().stream()
                .filter(a -> a.id().equals(chosen) && a.state().isOpen())
                .findFirst()
                .or(today::underWay);
        if (open.isPresent()) {
            return underWay(open.get(), nowMs);
        }
        return today.nextEntry(nowMs)
                .map(entry -> new CardToCall(tx, today, sum, units, nameOf).of(entry, nowMs))
                .orElse(null);
    }

    private NowView.Card underWay(AttemptNow attempt, long nowMs) {
        EntryAdded entry = today.entry(attempt.entryId());
        boolean before = attempt.state().isBeforeRelease();
        Optional<String> broke = before ? broke(attempt) : Optional.empty();
        Timed timed = WatchStore.timed(tx, attempt.id());
        List<ReadingTaken> readings = timed.readings();
        Optional<ModelAdded> model = Optional.ofNullable(attempt.modelId()).flatMap(id -> ModelStore.find(tx, id));
        List<NowView.Line> lines = new ArrayList<>();
        model.ifPresent(m -> lines.add(new NowView.Line("model", m.name())));
        Optional<Quiet> quiet = AttemptStore.quietNow(tx);
        lines.add(new NowView.Line(
                "watches",
                quiet.isPresent()
                        ? WatchWords.counted(readings)
                        : WatchWords.watches(tx, attempt, timed, today.event().timekeepers())));
        boolean landed = attempt.state() == State.LANDED;
        Optional<Doubts> doubts = landed ? Optional.of(Doubts.of(tx, attempt, today.event())) : Optional.empty();
        List<String> found = doubts.map(Doubts::found).orElse(List.of());
        if (quiet.isEmpty()) {
            Apart.made("What the time would be", () -> doubts.flatMap(WatchWords::wouldBe), CardOf::beside)
                    .ifPresent(lines::add);
        }
        lines.addAll(GateWords.passes(tx, attempt.id(), nameOf));
        if (attempt.state() == State.CALLED && entry.own()) {
            lines.addAll(HallLines.apart(tx, attempt.eventId(), units));
        }
        if (attempt.state() == State.HOLDING) {
            lines.add(new NowView.Line("by hand signal", "floor clear, permission, timekeepers ready"));
        }
        Optional<Collision> collision = ResultRecord.collision(tx, attempt.id());
        Optional<Long> choosing = collision
                .filter(c -> c.holds(nowMs, today.rules()).isEmpty())
                .map(c -> c.toldAtMs() + today.rules().collisionMs());
        WindowClock clock = WindowClock.of(before ? today.flightWindow(entry) : Optional.empty(), nowMs);
        boolean visiting = today.event().kind().equals("visiting");
        Announced.of(AttemptStore.note(tx, attempt.id()), readings, quiet.isPresent())
                .ifPresent(words -> lines.add(new NowView.Line("announced", words)));
        Optional<WindowAdded> window = today.window(entry);
        if (before && entry.own() && quiet.isEmpty()) {
            Apart.made("What is left of the window", () -> left(attempt, entry, window, nowMs), CardOf::beside)
                    .ifPresent(lines::add);
        }
        long latest = latestWinding(attempt, entry, window, nowMs);
        List<String> cautions = cautions(attempt, found(found, quiet.isPresent(), collision, nowMs), window, nowMs);
        return new NowView.Card(
                entry.name() + ", attempt " + attempt.number(),
                attempt.state() == State.RELEASED
                        ? "in the air"
                        : attempt.state().word(),
                latest > 0 ? CardToCall.LATEST : before ? clock.label() : "keep the time or fly again: time left",
                latest > 0 ? latest : before ? clock.until() : choosing.orElse(0L),
                clock,
                entry.id(),
                attempt.number(),
                attempt.id(),
                WatchStore.seen(tx, attempt).text(),
                before && quiet.isEmpty() && broke.isEmpty() ? planOf(attempt, model.orElse(null)) : null,
                lines,
                cautions,
                List.of(),
                List.of(),
                CardDeeds.of(attempt.state(), visiting, today.rules(), collision, nowMs),
                quiet.map(q -> "since " + Words.clock(q.fromMs(), zone)).orElse(""),
                visiting && (landed || attempt.state() == State.RELEASED),
                landed && !visiting
                        ? IntStream.rangeClosed(1, today.event().timekeepers())
                                .boxed()
                                .toList()
                        : List.of(),
                !visiting && !found.isEmpty(),
                false,
                attempt.state() == State.CALLED
                        ? WindingGate.refused(tx, attempt).orElse("")
                        : "",
                broke.orElse(""),
                attempt.state() == State.CALLED
                        ? BRIEF.subList(0, Math.max(0, Cautions.AT_ONCE - cautions.size()))
                        : List.of());
    }

    private static Optional<NowView.Line> beside(String words) {
        return Optional.of(new NowView.Line("not shown", words));
    }

    private Optional<NowView.Line> left(
            AttemptNow attempt, EntryAdded entry, Optional<WindowAdded> window, long nowMs) {
        return window.filter(w -> w.closesAtMs() > nowMs)
                .map(w -> TimeLeft.of(today, entry, sum, w, attempt, stepsOf(attempt), nowMs));
    }

    private Steps stepsOf(AttemptNow attempt) {
        return steps.stream()
                .filter(s -> s.attempt().equals(attempt.id()))
                .findFirst()
                .orElseGet(() -> new Steps(attempt.id(), attempt.calledAtMs(), null, null, null, null));
    }

    /** Until winding begins the one number is how late it may; 0 when another clock says more. */
    private long latestWinding(AttemptNow attempt, EntryAdded entry, Optional<WindowAdded> window, long nowMs) {
        return attempt.state() == State.CALLED && entry.own()
                ? window.filter(w -> w.opensAtMs() <= nowMs)
                        .map(w -> sum.latestWindingMs(w.closesAtMs()))
                        .filter(latest -> latest > nowMs)
                        .orElse(0L)
                : 0;
    }

    /** While it is quiet nobody is told what the watches say; a collision is no secret. */
    private List<String> found(List<String> doubts, boolean quiet, Optional<Collision> collision, long nowMs) {
        List<String> found = new ArrayList<>(quiet ? List.of() : doubts);
        collision.ifPresent(c -> found.add(c.at(nowMs, today.rules()).words() + "."));
        return found;
    }

    /** It is the first thing to know on every page of this attempt. */
    private Optional<String> broke(AttemptNow attempt) {
        return Optional.ofNullable(attempt.motorId())
                .flatMap(id -> MotorLifeStore.find(tx, id))
                .filter(life -> life.stage() == MotorStage.BROKEN)
                .map(life -> "Motor " + life.motor().tag() + " broke: hands off, look to everyone first.");
    }

    private NowView.@Nullable Plan planOf(AttemptNow attempt, @Nullable ModelAdded model) {
        return Optional.ofNullable(attempt.motorId())
                .flatMap(id -> MotorStore.find(tx, id))
                .map(motor -> PlanLines.of(tx, today.entry(attempt.entryId()), attempt.id(), motor, model, units))
                .orElse(null);
    }

    private static List<String> cautions(
            AttemptNow attempt, List<String> doubts, Optional<WindowAdded> window, long nowMs) {
        List<String> cautions = new ArrayList<>(doubts);
        boolean said = doubts.stream().anyMatch(doubt -> doubt.contains("outside the window"));
        window.filter(w -> !said)
                .flatMap(w ->
                        Words.outside(w, attempt.state().isBeforeRelease() ? (Long) nowMs : attempt.releasedAtMs()))
                .ifPresent(cautions::add);
        return cautions;
    }
}
