package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.BackwardSum;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.StepTimes;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.attempt.store.Stations;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.UnitSystem;

/** The lines of the card of an attempt under way. */
final class CardLines {
    static final String ANNOUNCED = "announced";

    private final Tx tx;
    private final Today today;
    private final UnitSystem units;
    private final UnaryOperator<String> nameOf;
    private final BackwardSum sum;
    private final List<StepTimes> steps;

    CardLines(
            Tx tx,
            Today today,
            UnitSystem units,
            UnaryOperator<String> nameOf,
            BackwardSum sum,
            List<StepTimes> steps) {
        this.tx = tx;
        this.today = today;
        this.units = units;
        this.nameOf = nameOf;
        this.sum = sum;
        this.steps = steps;
    }

    /** After a break, and while turns are on, only what it is about. */
    List<NowView.Line> of(
            AttemptNow attempt,
            LiveAttempt live,
            EntryAdded entry,
            Optional<ModelAdded> model,
            WatchesTold told,
            long nowMs) {
        List<NowView.Line> lines = new ArrayList<>();
        model.ifPresent(m -> lines.add(new NowView.Line("model", m.name())));
        if (live.phase().name().isUrgent()) {
            return lines;
        }
        boolean quiet = AttemptStore.quietNow(tx).isPresent();
        Timed timed = told.timed();
        boolean untold = quiet || told.hidden();
        lines.add(new NowView.Line(
                "watches",
                untold
                        ? WatchWords.counted(timed.readings())
                        : WatchWords.watches(tx, attempt, timed, today.event().timekeepers())));
        if (live.phase().name() == AttemptPhase.Name.LANDED) {
            told.awaited().words(who(attempt)).ifPresent(words -> lines.add(new NowView.Line("waits for", words)));
        }
        if (!untold) {
            Apart.made("What the time would be", () -> told.doubts().flatMap(WatchWords::wouldBe), CardLines::beside)
                    .ifPresent(lines::add);
        }
        if (live.phase().name().isBeforeRelease() && entry.own()) {
            lines.addAll(WhoDoesWhat.of(tx, entry, attempt.number(), nameOf).lines());
            WindingPlaces.line(tx, live).ifPresent(lines::add);
        }
        lines.addAll(GateWords.passes(tx, attempt, nameOf));
        if (live.phase().name() == AttemptPhase.Name.CALLED && entry.own() && attempt.motorId() == null) {
            lines.add(
                    MotorsAtHand.offersOrNone(tx, entry, ModelStore.ofEntry(tx, entry.id()))
                                    .isEmpty()
                            ? WhyNoMotor.line(tx, entry, true)
                            : new NowView.Line("motor", "none is named yet: take one under Another motor"));
        }
        if (live.phase().name() == AttemptPhase.Name.CALLED && entry.own()) {
            lines.addAll(HallLines.apart(tx, attempt.eventId(), () -> Stations.of(tx, entry, attempt.id()), units));
        }
        if (live.phase().name() == AttemptPhase.Name.HOLDING) {
            lines.add(new NowView.Line("by hand signal", "floor clear, permission, timekeepers ready"));
            takenOff(attempt).ifPresent(lines::add);
        }
        aloft(attempt, live).ifPresent(lines::add);
        Announced.of(tx, attempt, today.event(), untold)
                .ifPresent(words -> lines.add(new NowView.Line(ANNOUNCED, words)));
        if (live.phase().name().isBeforeRelease() && entry.own() && !quiet) {
            Apart.made("What is left of the window", () -> left(attempt, live, entry, nowMs), CardLines::beside)
                    .ifPresent(lines::add);
        }
        return lines;
    }

    /** What happened in the air, and while it is held what the rules make of it. */
    private Optional<NowView.Line> aloft(AttemptNow attempt, LiveAttempt live) {
        boolean held = live.phase() instanceof AttemptPhase.InTheAir flies && flies.caughtMs() != null;
        String words = attempt.aloft().words();
        String said = words.isEmpty() && held ? "caught, as a watch marked it" : words;
        return said.isEmpty()
                ? Optional.empty()
                : Optional.of(new NowView.Line(
                        "aloft",
                        said + (held ? ". By the rules " + today.rules().caughtWords() : "")));
    }

    /** Turns that came off again while it is held. */
    private Optional<NowView.Line> takenOff(AttemptNow attempt) {
        return Optional.ofNullable(attempt.motorId())
                .map(motor -> BreakRecord.turnsOff(tx, attempt.id(), motor))
                .filter(turns -> turns > 0)
                .map(turns -> new NowView.Line("taken off", PlainNumber.of(turns) + " crank turns"));
    }

    private IntFunction<String> who(AttemptNow attempt) {
        List<WatchTaken> taken = WatchStore.watches(tx, attempt.id());
        return slot -> taken.stream()
                .filter(watch -> watch.slot() == slot)
                .map(watch -> WatchWords.who(watch, nameOf))
                .findFirst()
                .orElse("");
    }

    static Optional<NowView.Line> beside(String words) {
        return Optional.of(new NowView.Line("not shown", words));
    }

    private Optional<NowView.Line> left(AttemptNow attempt, LiveAttempt live, EntryAdded entry, long nowMs) {
        return today.window(entry, nowMs)
                .filter(w -> w.closesAtMs() > nowMs)
                .map(w -> TimeLeft.of(today, entry, sum, w, live.phase(), stepsOf(attempt), nowMs));
    }

    private StepTimes stepsOf(AttemptNow attempt) {
        return steps.stream()
                .filter(s -> s.attempt().equals(attempt.id()))
                .findFirst()
                .orElseGet(() -> new StepTimes(attempt.id(), attempt.calledAtMs(), null, null, null, null));
    }
}
