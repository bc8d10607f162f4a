package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.ElapsedDoubts;
import org.skeinday.attempt.Marks;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WatchMark;
import org.skeinday.attempt.WatchMarked;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlightWindows;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;

/** A timekeeper takes a place, sees the release, sees the landing. A tap is never refused for being late. */
public final class WatchActions {
    private WatchActions() {}

    /**
     * The model was released.
     *
     * @param serverMs when, by the server's clock as the device knew it, epoch ms; null when it did not
     * @param boundMs by how much that may be wrong
     */
    public record SeenRelease(
            String attempt,
            int slot,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /**
     * The model touched the floor.
     *
     * @param ms release to landing on the device's own monotonic clock
     * @param serverMs as for the release
     * @param boundMs as for the release
     * @param corrects id of this watch's earlier landing tap that was a mistake
     * @param gapMs by how much the device's monotonic and wall clock came apart meanwhile; null for not at all
     * @param reloaded true when the page was loaded anew meanwhile
     * @param partial true when its timekeeper took the watch over in the air: the duration is from the release as the server
     *     told it; null for no
     */
    public record SeenLanding(
            String attempt,
            int slot,
            long ms,
            @Nullable Long serverMs,
            @Nullable Long boundMs,
            @Nullable String corrects,
            @Nullable Long gapMs,
            @Nullable Boolean reloaded,
            @Nullable Boolean partial) {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("watch.take", TakeWatch.TakePlace.class, TakeWatch::decide),
                new ActKind<>("watch.release", SeenRelease.class, WatchActions::release),
                new ActKind<>("watch.landing", SeenLanding.class, WatchActions::landing),
                new ActKind<>("watch.mark", MarkWatch.Mark.class, MarkWatch::decide));
    }

    static Decision release(Tx tx, ActContext context, SeenRelease seen) {
        AttemptNow attempt = AttemptStore.find(tx, seen.attempt()).orElse(null);
        if (attempt == null || !holds(tx, context, seen.attempt(), seen.slot())) {
            return notThisWatch(seen.slot());
        }
        TapTime.Moment when = seen(attempt, context, seen.serverMs(), seen.boundMs());
        List<Fact> facts = new ArrayList<>(movedTo(tx, context, State.RELEASED, attempt, when.atMs(), when.atMs()));
        Optional<WatchMarked> known = WatchStore.marks(tx, attempt.id()).release(seen.slot());
        if (TakenInAir.isLate(tx, context, attempt, seen.slot(), known, when)) {
            facts.add(mark(
                    context, context.ownId(), seen.attempt(), seen.slot(), WatchMark.LATE_RELEASE, null, null, when));
        } else if (known.isEmpty()) { // a landing may have told it
            facts.add(
                    mark(context, context.ownId(), seen.attempt(), seen.slot(), WatchMark.RELEASED, null, null, when));
        }
        return new Decision.Decided(facts, Map.of(), AttemptActions.MOVED);
    }

    static Decision landing(Tx tx, ActContext context, SeenLanding seen) {
        AttemptNow attempt = AttemptStore.find(tx, seen.attempt()).orElse(null);
        if (attempt == null || !holds(tx, context, seen.attempt(), seen.slot())) {
            return notThisWatch(seen.slot());
        }
        if (seen.ms() < 0 || seen.ms() > ReadingTaken.LONGEST_MS) {
            return Decision.refused("A flight lasts 0 ms to 2 hours, but this one " + seen.ms() + " ms");
        }
        TapTime.Moment when = seen(attempt, context, seen.serverMs(), seen.boundMs());
        Marks marks = WatchStore.marks(tx, attempt.id());
        Optional<WatchMarked> release = marks.release(seen.slot());
        boolean partial = Boolean.TRUE.equals(seen.partial())
                || marks.wasStartedLate(seen.slot())
                || TakenInAir.is(tx, context, attempt, seen.slot());
        Optional<Long> apart =
                release.flatMap(mark -> ElapsedDoubts.apart(seen.ms(), mark, when.atMs(), when.boundMs()));
        long releasedAtMs = release.map(WatchMarked::atMs)
                .orElseGet(() ->
                        Math.max(when.atMs() - seen.ms(), TakenInAir.notBefore(tx, context, attempt, seen.slot())));
        long lastedMs = Math.min(seen.ms(), seen.ms() + apart.orElse(0L));
        State to = lastedMs < ElapsedDoubts.DOUBLE_PRESS_MS
                ? State.RELEASED
                : State.LANDED; // a double press lands nothing
        List<Fact> facts = new ArrayList<>(movedTo(tx, context, to, attempt, when.atMs(), releasedAtMs));
        if (release.isEmpty() && !partial) {
            facts.add(
                    mark( // the tap for the release is on its way, or lost
                            context,
                            context.nextId(),
                            attempt.id(),
                            seen.slot(),
                            WatchMark.RELEASED,
                            null,
                            null,
                            new TapTime.Moment(releasedAtMs, when.boundMs())));
        }
        var reading = new ReadingTaken(
                context.ownId(),
                attempt.id(),
                seen.slot(),
                "device",
                context.person(),
                seen.ms(),
                context.now().toEpochMilli(),
                seen.corrects() == null ? null : ActContext.ownIdOf(seen.corrects()),
                null,
                partial ? Boolean.TRUE : null);
        facts.add(Fact.of("attempt.reading", reading));
        if (apart.isPresent() && !partial) {
            facts.add(mark(
                    context,
                    context.nextId(),
                    attempt.id(),
                    seen.slot(),
                    WatchMark.APART,
                    apart.get(),
                    reading.id(),
                    when));
        }
        Long gapMs = seen.gapMs();
        if (gapMs != null) {
            facts.add(mark(context, context.nextId(), attempt.id(), seen.slot(), WatchMark.GAP, gapMs, null, when));
        }
        if (Boolean.TRUE.equals(seen.reloaded())) {
            facts.add(mark(context, context.nextId(), attempt.id(), seen.slot(), WatchMark.RELOADED, null, null, when));
        }
        return new Decision.Decided(facts, Map.of(), AttemptActions.MOVED);
    }

    static Fact mark(
            ActContext context,
            String id,
            String attempt,
            int slot,
            WatchMark what,
            @Nullable Long ms,
            @Nullable String about,
            TapTime.Moment when) {
        return Fact.of(
                "watch.marked",
                new WatchMarked(
                        id, attempt, slot, what.word(), ms, about, when.atMs(), when.boundMs(), context.person()));
    }

    static Decision notThisWatch(int slot) {
        return Decision.refused("This device is not watch " + slot
                + " of that attempt. Tell the captain the time; the laptop can take the entry in from a file");
    }

    /** A device whose watch was given over may still bring what it saw: a person decides which reading counts. */
    static boolean holds(Tx tx, ActContext context, String attempt, int slot) {
        return WatchStore.everWatched(tx, attempt, context.device()).stream().anyMatch(w -> w.slot() == slot);
    }

    /** Not before the call. */
    static TapTime.Moment seen(
            AttemptNow attempt, ActContext context, @Nullable Long serverMs, @Nullable Long boundMs) {
        return TapTime.moment(context, serverMs, boundMs, attempt.calledAtMs() == null ? 0 : attempt.calledAtMs());
    }

    /**
     * The first watch moves the attempt; what the others say later is a reading only. After its motor broke no watch that was
     * started later moves it: nothing flew, and people are asked about. What it saw is kept beside.
     */
    private static List<Fact> movedTo(
            Tx tx, ActContext context, State to, AttemptNow now, long atMs, long releasedAtMs) {
        List<Fact> facts = new ArrayList<>();
        Attempt attempt = Attempt.of(now);
        if (brokeBefore(tx, now, releasedAtMs)) {
            return facts;
        }
        if (attempt instanceof Attempt.BeforeRelease before) {
            facts.addAll(HandsThen.kept(tx, now));
            facts.add(Fact.of("attempt.moved", before.release(releasedAtMs)));
            facts.add(FlightWindows.kept(tx, now, releasedAtMs));
            MotorGoes.with(tx, context, now, State.RELEASED, releasedAtMs).ifPresent(facts::add);
            facts.add(PhaseGate.acted(context, now.id(), AttemptAct.RELEASED));
            attempt = new ReleasedAttempt(now.id()); // for a landing, the release tap may still be on its way
        }
        if (to == State.LANDED && attempt instanceof ReleasedAttempt released) {
            facts.add(Fact.of("attempt.moved", released.land(atMs)));
            facts.add(PhaseGate.acted(context, now.id(), AttemptAct.LANDED));
        }
        return facts;
    }

    /** A release that was seen before the break and comes in late is one: then the motor broke in the air. */
    private static boolean brokeBefore(Tx tx, AttemptNow now, long releasedAtMs) {
        return LiveAttempts.find(tx, now.id()).orElseThrow().phase() instanceof AttemptPhase.Broke broke
                && broke.sinceMs() <= releasedAtMs;
    }
}
