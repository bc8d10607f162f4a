package org.skeinday.attempt;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.DayKind;
import org.skeinday.timing.Contact;
import org.skeinday.winding.Wind;

/**
 * One attempt as every page shows it.
 *
 * @param id empty for one that is to be called
 * @param wind which wind of the attempt it is in, or comes next; from 1
 * @param windowOpenMs when its window opened at an official's word, ms since 1970 UTC; null while it did not, and where
 *     windows are those of the day
 */
public record LiveAttempt(
        String id,
        String entryId,
        AttemptNumber number,
        @Nullable String modelId,
        @Nullable String motorId,
        int wind,
        DayKind day,
        AttemptPhase phase,
        @Nullable Long windowOpenMs) {

    /** One that is to be called, with what is assigned to it. */
    public static LiveAttempt next(
            String entryId, AttemptNumber number, @Nullable String modelId, @Nullable String motorId, DayKind day) {
        return new LiveAttempt("", entryId, number, modelId, motorId, 1, day, new AttemptPhase.Next(), null);
    }

    /** The one function from the record to the phase. */
    public static LiveAttempt of(AttemptEvidence known) {
        AttemptNow now = known.now();
        return new LiveAttempt(
                now.id(),
                now.entryId(),
                now.number(),
                now.modelId(),
                now.motorId(),
                known.windsOver() + 1,
                known.day(),
                phase(known),
                known.windowOpenMs());
    }

    /** Called, and nothing is wound yet in the window that an official let begin. */
    boolean waitsInWindow() {
        return windowOpenMs != null && phase.name() == AttemptPhase.Name.CALLED;
    }

    private static AttemptPhase phase(AttemptEvidence known) {
        AttemptNow now = known.now();
        return switch (now.state()) {
            case PLANNED -> new AttemptPhase.Next();
            case CALLED, WINDING, HOLDING -> beforeRelease(known);
            case RELEASED ->
                new AttemptPhase.InTheAir(
                        orZero(now.releasedAtMs()), caught(known).orElse(null), known.motorBrokeAtMs() != null);
            case LANDED ->
                new AttemptPhase.Landed(
                        orZero(now.landedAtMs()),
                        Readings.watches(known.timed(), Optional.empty())
                                .counted()
                                .size(),
                        known.watchesWanted(),
                        heldMs(known).orElse(null));
            case CLOSED ->
                new AttemptPhase.Official(
                        orZero(now.closedAtMs()), orZero(now.officialMs()), known.signaturesMissing());
            case SCRUBBED -> abandoned(known);
            case VOID -> new AttemptPhase.DeclaredVoid(orZero(now.closedAtMs()), reason(now), now.flownAgain());
        };
    }

    private static AttemptPhase beforeRelease(AttemptEvidence known) {
        AttemptNow now = known.now();
        Long broke = known.motorBrokeAtMs();
        int wind = known.windsOver() + 1;
        if (broke != null && now.motorId() != null) {
            AttemptEvidence.BreakTold told = known.breakOf(now.motorId());
            return new AttemptPhase.Broke(broke, now.motorId(), told.peopleSafe(), told.where(), false);
        }
        return switch (now.state()) {
            case WINDING -> new AttemptPhase.Winding(orZero(known.steps().windingAtMs()), wind);
            case HOLDING -> holding(known, wind);
            default -> new AttemptPhase.Called(orZero(now.calledAtMs()), wind);
        };
    }

    /** More turns go on as soon as the reader says so; the hold begins anew with the last of them. */
    private static AttemptPhase holding(AttemptEvidence known, int wind) {
        Optional<Wind> present = known.presentWind();
        if (present.filter(Wind::turnsGoOn).isPresent()) {
            return new AttemptPhase.Winding(orZero(known.steps().windingAtMs()), wind);
        }
        long sinceMs =
                present.flatMap(Wind::heldSince).orElse(orZero(known.steps().holdingAtMs()));
        return new AttemptPhase.Holding(Math.min(sinceMs, heldBeside(known).orElse(sinceMs)), wind);
    }

    /** Two motors that are held at once are a wind each, and the one that waits longest counts. */
    private static Optional<Long> heldBeside(AttemptEvidence known) {
        return known.windsBeside().stream()
                .flatMap(other -> other.heldSince().stream())
                .min(Comparator.naturalOrder());
    }

    private static AttemptPhase abandoned(AttemptEvidence known) {
        AttemptNow now = known.now();
        String motor = now.motorId();
        long sinceMs = orZero(now.closedAtMs());
        if (!known.turnsOn() || motor == null) {
            return new AttemptPhase.Abandoned(sinceMs, reason(now));
        }
        return known.motorBrokeAtMs() == null
                ? new AttemptPhase.RunBack(sinceMs, motor)
                : brokeWhileGivenUp(known, motor, known.motorBrokeAtMs());
    }

    /** It had turns on when it was given up, and broke before it was run back: people first; then no turns are on. */
    private static AttemptPhase brokeWhileGivenUp(AttemptEvidence known, String motor, long brokeAtMs) {
        AttemptEvidence.BreakTold told = known.breakOf(motor);
        return told.peopleSafe() && told.where() != null
                ? new AttemptPhase.Abandoned(orZero(known.now().closedAtMs()), reason(known.now()))
                : new AttemptPhase.Broke(brokeAtMs, motor, told.peopleSafe(), told.where(), true);
    }

    /** The first contact that still lasts, as the watches or the captain see it, ms after the release. */
    private static Optional<Long> caught(AttemptEvidence known) {
        Aloft aloft = known.now().aloft();
        Long seen = aloft.caughtMs();
        Long freed = aloft.freedMs();
        Stream<Long> byCaptain = seen == null || freed != null ? Stream.empty() : Stream.of(seen);
        Stream<Long> byWatches = IntStream.rangeClosed(1, 3)
                .mapToObj(slot -> known.timed().marks().held(slot))
                .flatMap(List::stream)
                .filter(c -> c.freedMs() == null && (freed == null || c.fromMs() > freed))
                .map(Contact::fromMs);
        return Stream.concat(byCaptain, byWatches).min(Comparator.naturalOrder());
    }

    /** The longest of its catches, as the captain or a watch saw it; one that lasted, until it was down. */
    private static Optional<Long> heldMs(AttemptEvidence known) {
        Aloft aloft = known.now().aloft();
        long downMs = orZero(known.now().landedAtMs()) - orZero(known.now().releasedAtMs());
        Stream<Long> byCaptain = aloft.caughtMs() == null
                ? Stream.empty()
                : Stream.of(aloft.stillHeld() ? Long.MAX_VALUE : lasted(aloft.caughtMs(), aloft.freedMs(), downMs));
        Stream<Long> byWatches = IntStream.rangeClosed(1, 3)
                .mapToObj(slot -> known.timed().marks().held(slot))
                .flatMap(List::stream)
                .map(c -> lasted(c.fromMs(), c.freedMs(), downMs));
        return Stream.concat(byCaptain, byWatches).max(Comparator.naturalOrder());
    }

    private static long lasted(long fromMs, @Nullable Long freedMs, long downMs) {
        return Math.max(0, (freedMs == null ? downMs : freedMs) - fromMs);
    }

    /** Called and not released yet, whether its motor is whole or just broke. */
    public boolean isToFly() {
        return phase.name().isBeforeRelease() || phase instanceof AttemptPhase.Broke broke && !broke.givenUp();
    }

    /** Called and not over: it holds the floor or the bench. What was given up with its turns on is over, and comes first. */
    public boolean isUnderWay() {
        boolean givenUp = phase.name() == AttemptPhase.Name.RUN_BACK
                || phase instanceof AttemptPhase.Broke broke && broke.givenUp();
        return phase.name() != AttemptPhase.Name.NEXT && !phase.name().isOver() && !givenUp;
    }

    /** For how long it has been, or was, held at a time in the air; null when nothing holds or held it. */
    public @Nullable Long heldMs(long nowMs) {
        if (phase instanceof AttemptPhase.InTheAir flies && flies.caughtMs() != null) {
            return Math.max(0, nowMs - flies.sinceMs() - flies.caughtMs());
        }
        return phase instanceof AttemptPhase.Landed landed ? landed.heldMs() : null;
    }

    /** Whether something holds it in the air, or held it until it was down. */
    public boolean isCaught() {
        return phase instanceof AttemptPhase.InTheAir flies && flies.caughtMs() != null
                || phase instanceof AttemptPhase.Landed landed && landed.heldMs() != null;
    }

    private static String reason(AttemptNow now) {
        return Objects.requireNonNullElse(now.voidReason(), "");
    }

    private static long orZero(@Nullable Long ms) {
        return ms == null ? 0 : ms;
    }
}
