package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.BackwardSum;
import org.skeinday.attempt.Collision;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.OneNumber;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.StepTimes;
import org.skeinday.attempt.action.SaidMeanwhile;
import org.skeinday.attempt.action.TimeDoubts;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.StepsStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.steps.Caution;
import org.skeinday.steps.Cautions;
import org.skeinday.steps.Moment;
import org.skeinday.steps.web.GateView;
import org.skeinday.timing.ReleaseVerdict;
import org.skeinday.units.UnitSystem;

/** Makes the card of the attempt under way, or of the entry that must come next. */
final class NowPresenter {
    /** This page looks alike for many: the full text stands where one person reads it. */
    private static final String MORE_TIME =
            " If the officials gave more time, move its window in Prepare; else abandon the attempt.";

    private static final List<Cautions.Shown> BRIEF = Cautions.at(
            Moment.BEFORE_WINDING, Cautions.all().stream().map(Caution::id).collect(Collectors.toSet()));

    private final Tx tx;
    private final Today today;
    private final UnitSystem units;
    private final UnaryOperator<String> nameOf;
    private final List<StepTimes> steps;
    private final BackwardSum sum;
    private final ZoneId zone;
    private final boolean captain;

    /**
     * @param nameOf display name of a person's id
     * @param captain whether the reader sees each watch at once: who times must not
     */
    NowPresenter(Tx tx, Today today, UnitSystem units, UnaryOperator<String> nameOf, ZoneId zone, boolean captain) {
        this.tx = tx;
        this.today = today;
        this.units = units;
        this.nameOf = nameOf;
        this.zone = zone;
        this.captain = captain;
        this.steps = StepsStore.ofOwn(tx);
        boolean landing = today.rules().mustLandInside();
        this.sum = Apart.made(
                "How long own attempts took",
                () -> new BackwardSum(Estimate.ofAttempts(steps), landing),
                words -> new BackwardSum(Estimate.ofAttempts(List.of()), landing));
    }

    /** @param chosen id of the attempt to show while it is open; any other, for the most urgent one */
    @Nullable
    NowCard card(long nowMs, String chosen) {
        Optional<AttemptNow> open = today.attempts().stream()
                .filter(a -> a.id().equals(chosen) && today.isOpen(a))
                .findFirst()
                .or(today::underWay);
        if (open.isPresent()) {
            return underWay(open.get(), nowMs);
        }
        return today.nextEntry(nowMs)
                .map(entry -> new CardToCall(tx, today, sum, units, nameOf).of(entry, nowMs))
                .orElse(null);
    }

    /** Of the attempts that are under way beside the one that is shown. */
    List<NowCard> others(String shown, long nowMs) {
        return today.open().stream()
                .filter(a -> !a.id().equals(shown))
                .map(a -> underWay(a, nowMs))
                .toList();
    }

    private NowCard underWay(AttemptNow attempt, long nowMs) {
        LiveAttempt live = today.live(attempt.id());
        EntryAdded entry = today.entry(attempt.entryId());
        Optional<Quiet> quiet = AttemptStore.quietNow(tx);
        Optional<ModelAdded> model = Optional.ofNullable(attempt.modelId()).flatMap(id -> ModelStore.find(tx, id));
        Optional<Collision> collision = ResultRecord.collision(tx, attempt.id());
        boolean before = live.phase().name().isBeforeRelease();
        Optional<TimeDoubts> doubts = live.phase().name() == AttemptPhase.Name.LANDED
                ? Optional.of(TimeDoubts.of(tx, attempt, today.event()))
                : Optional.empty();
        WatchesTold told = WatchesTold.of(tx, live, today.event(), doubts, captain);
        List<NowView.Line> lines =
                new CardLines(tx, today, units, nameOf, sum, steps).of(attempt, live, entry, model, told, nowMs);
        WindowClock clock = before ? WindowClock.of(tx, today, entry, nowMs) : WindowClock.NONE;
        return new NowCard(
                live,
                entry.name() + ", " + attempt.number().words(),
                Strips.of(live),
                OneNumber.of(
                        live,
                        today.flightWindow(entry),
                        latestStart(entry, nowMs),
                        choiceEnds(collision, nowMs),
                        nowMs),
                clock,
                before && quiet.isEmpty() ? planOf(attempt, model.orElse(null)) : null,
                lines,
                missing(attempt, live, quiet, collision, told, lines, nowMs),
                acts(attempt, live, entry, collision, quiet.isPresent(), nowMs));
    }

    private NowCard.Missing missing(
            AttemptNow attempt,
            LiveAttempt live,
            Optional<Quiet> quiet,
            Optional<Collision> collision,
            WatchesTold told,
            List<NowView.Line> lines,
            long nowMs) {
        List<String> found = told.doubts()
                .map(doubts -> live.day() == DayKind.VISITING ? doubts.elsewhere() : doubts.found())
                .orElse(List.of());
        boolean saidOutside =
                quiet.isEmpty() && told.doubts().filter(NowPresenter::isOutside).isPresent();
        List<String> cautions = new ArrayList<>(found(found, quiet.isPresent(), collision, nowMs));
        if (!saidOutside) {
            outside(attempt, live, nowMs).ifPresent(cautions::add);
        }
        boolean called = live.phase().name() == AttemptPhase.Name.CALLED;
        boolean announced = lines.stream().anyMatch(line -> line.label().equals(CardLines.ANNOUNCED));
        return new NowCard.Missing(
                quiet.map(q -> "since " + PageWords.clock(q.fromMs(), zone)).orElse(""),
                cautions,
                called
                        ? few(BRIEF, Cautions.AT_ONCE - cautions.size())
                        : brief(live.phase().name()),
                called ? GateWords.waits(tx, attempt) : GateView.OPEN,
                CardActs.announces(live) && !announced,
                live.day() != DayKind.VISITING && !found.isEmpty(),
                today.stopped(),
                today.isShut(attempt));
    }

    /** What bites in this phase, whatever else is to be said. */
    private static List<Cautions.Shown> brief(AttemptPhase.Name phase) {
        return switch (phase) {
            case HOLDING, RUN_BACK -> Cautions.brief(Cautions.GOGGLES);
            case IN_THE_AIR -> Cautions.brief(Cautions.LOOKING_UP);
            case LANDED -> Cautions.brief(Cautions.LANDED);
            default -> List.of();
        };
    }

    private static List<Cautions.Shown> few(List<Cautions.Shown> cautions, int most) {
        return cautions.subList(0, Math.max(0, Math.min(most, cautions.size())));
    }

    private NowCard.Acts acts(
            AttemptNow attempt,
            LiveAttempt live,
            EntryAdded entry,
            Optional<Collision> collision,
            boolean quiet,
            long nowMs) {
        boolean spares = entry.own() && CardActs.of(live).contains(AttemptAct.TAKE_SPARE);
        return new NowCard.Acts(
                WatchStore.seen(tx, attempt).text(),
                CardActs.deeds(live, today.rules(), collision, lacksCatch(attempt), today.stopped(), nowMs),
                List.of(),
                List.of(),
                spares ? new CardToCall(tx, today, sum, units, nameOf).spares(entry, attempt, quiet) : List.of(),
                WindingPlaces.of(tx, attempt, live, nowMs),
                CardActs.judges(live, today.event().timekeepers()),
                CardActs.judges(live, today.event().timekeepers()).isEmpty()
                        ? List.of()
                        : WatchWords.several(tx, attempt.id(), quiet),
                live.isCaught() && today.rules().hold().isPresent(),
                CardActs.announces(live),
                false,
                said(attempt, live),
                entry.own() && live.phase().name() == AttemptPhase.Name.CALLED
                        ? WhoDoesWhat.of(tx, entry, attempt.number(), nameOf).choices(tx, entry.eventId())
                        : List.of(),
                broke(live));
    }

    /** Before the release the phase itself has the key. */
    private String broke(LiveAttempt live) {
        String motor = live.motorId();
        return motor == null
                        || live.phase().name().isBeforeRelease()
                        || CardActs.of(live).contains(AttemptAct.NOT_BROKEN)
                ? ""
                : Apart.made(
                        "Whether its motor broke",
                        () -> MotorLifeStore.breakOf(tx, motor)
                                .map(MotorStep::id)
                                .orElse(""),
                        words -> "");
    }

    private NowCard.Said said(AttemptNow attempt, LiveAttempt live) {
        int watches =
                CardActs.of(live).contains(AttemptAct.TYPE_TIME) ? today.event().timekeepers() : 0;
        return new NowCard.Said(
                live.phase().name() == AttemptPhase.Name.CALLED
                        ? SaidMeanwhile.seen(
                                tx,
                                SaidMeanwhile.hands(
                                        attempt.entryId(), attempt.number().running()))
                        : "",
                CardActs.announces(live) ? SaidMeanwhile.seen(tx, SaidMeanwhile.announced(attempt.id())) : "",
                SaidMeanwhile.seenWatches(tx, attempt.id(), watches));
    }

    private boolean lacksCatch(AttemptNow attempt) {
        return today.rules()
                .hold()
                .filter(hold -> Readings.lackCatch(WatchStore.timed(tx, attempt.id()), attempt.aloft(), hold))
                .isPresent();
    }

    private OptionalLong latestStart(EntryAdded entry, long nowMs) {
        return today.window(entry, nowMs)
                .filter(w -> entry.own())
                .map(w -> OptionalLong.of(sum.latestWindingMs(w.closesAtMs())))
                .orElse(OptionalLong.empty());
    }

    private OptionalLong choiceEnds(Optional<Collision> collision, long nowMs) {
        return collision
                .filter(c -> c.holds(nowMs, today.rules()).isEmpty())
                .map(c -> OptionalLong.of(c.toldAtMs() + today.rules().collisionMs()))
                .orElse(OptionalLong.empty());
    }

    /** While it is quiet nobody is told what the watches say; a collision is no secret. */
    private List<String> found(List<String> doubts, boolean quiet, Optional<Collision> collision, long nowMs) {
        List<String> found = new ArrayList<>(quiet ? List.of() : doubts);
        collision.ifPresent(c -> found.add(c.at(nowMs, today.rules()).words() + "."));
        return found;
    }

    private NowView.@Nullable Plan planOf(AttemptNow attempt, @Nullable ModelAdded model) {
        return Optional.ofNullable(attempt.motorId())
                .flatMap(id -> MotorStore.find(tx, id))
                .map(motor -> PlanLines.of(tx, today.entry(attempt.entryId()), attempt.id(), motor, model, units))
                .orElse(null);
    }

    private static boolean isOutside(TimeDoubts doubts) {
        return doubts.verdict()
                .filter(verdict -> verdict.side() == ReleaseVerdict.Side.OUTSIDE)
                .isPresent();
    }

    /** After a break nothing is said of windows: people come first. */
    private Optional<String> outside(AttemptNow attempt, LiveAttempt live, long nowMs) {
        return today.windowOf(attempt)
                .map(w -> live.phase().name().isBeforeRelease() ? today.hall().goingOn(w, nowMs) : w)
                .filter(w -> !live.phase().name().isUrgent())
                .flatMap(w -> PageWords.outside(
                        w, live.phase().name().isBeforeRelease() ? (Long) nowMs : attempt.releasedAtMs()))
                .map(words -> words + (today.isShut(attempt) ? MORE_TIME : ""));
    }
}
