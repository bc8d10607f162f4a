package org.skeinday.attempt;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.timing.Contact;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPhase;

/**
 * One attempt as every page shows it.
 *
 * @param id null for one that is to be called
 * @param number in the rules' count, from 1
 * @param winds begun so far
 */
public record LiveAttempt(
        @Nullable String id,
        String entryId,
        int number,
        @Nullable String modelId,
        @Nullable String motorId,
        int winds,
        AttemptPhase phase) {

    /** The one function from the record to the phase. */
    public static LiveAttempt of(AttemptEvidence known) {
        AttemptNow now = known.now();
        return new LiveAttempt(
                now.id(),
                now.entryId(),
                now.number(),
                now.modelId(),
                now.motorId(),
                known.winds().size(),
                phase(known));
    }

    private static AttemptPhase phase(AttemptEvidence known) {
        AttemptNow now = known.now();
        return switch (now.state()) {
            case PLANNED -> new AttemptPhase.Next();
            case CALLED, WINDING, HOLDING -> beforeRelease(known);
            case RELEASED -> new AttemptPhase.InTheAir(orZero(now.releasedAtMs()), caught(known.timed()).orElse(null));
            case LANDED ->
                new AttemptPhase.Landed(
                        orZero(now.landedAtMs()),
                        Readings.thatCount(known.timed().readings()).size(),
                        known.watchesWanted());
            case CLOSED ->
                new AttemptPhase.Official(
                        orZero(now.closedAtMs()), orZero(now.officialMs()), known.signaturesMissing());
            case SCRUBBED -> abandoned(known);
            case VOID -> new AttemptPhase.Void(now.closedAtMs(), reason(now), now.flownAgain());
        };
    }

    private static AttemptPhase beforeRelease(AttemptEvidence known) {
        AttemptNow now = known.now();
        Long broke = known.motorBrokeAtMs();
        if (broke != null) {
            return new AttemptPhase.Broke(
                    broke,
                    Objects.requireNonNull(now.motorId()),
                    known.afterBreak().peopleSafe(),
                    known.afterBreak().where());
        }
        int wind = Math.max(1, known.winds().size());
        return switch (now.state()) {
            case WINDING -> new AttemptPhase.Winding(orZero(known.steps().windingAtMs()), wind);
            case HOLDING -> new AttemptPhase.Holding(lastTurn(known), wind);
            default -> new AttemptPhase.Called(orZero(now.calledAtMs()), known.winds().size());
        };
    }

    /** By the reader's key, else by when somebody said that it was wound. */
    private static long lastTurn(AttemptEvidence known) {
        return known.ofPresentMotor().stream()
                .map(LiveAttempt::lastTurn)
                .flatMap(Optional::stream)
                .min(Comparator.naturalOrder()) // of two motors the earliest hold counts
                .orElse(orZero(known.steps().holdingAtMs()));
    }

    /** Of one wind: its last stop that no turns followed. */
    private static Optional<Long> lastTurn(Wind wind) {
        return wind.phases().stream()
                .filter(p -> p.phase().equals(WindPhase.STOPPED) || p.phase().equals(WindPhase.AGAIN))
                .reduce((earlier, later) -> later)
                .filter(p -> p.phase().equals(WindPhase.STOPPED))
                .map(WindPhase::atMs);
    }

    private static AttemptPhase abandoned(AttemptEvidence known) {
        AttemptNow now = known.now();
        return known.turnsOn() && now.motorId() != null
                ? new AttemptPhase.RunBack(orZero(now.closedAtMs()), now.motorId())
                : new AttemptPhase.Abandoned(now.closedAtMs(), reason(now));
    }

    /** The longest contact that still lasts, as the watches see it. */
    private static Optional<Long> caught(Timed timed) {
        List<Contact> held = IntStream.rangeClosed(1, 3)
                .mapToObj(slot -> timed.marks().held(slot))
                .flatMap(List::stream)
                .toList();
        return held.stream()
                .filter(c -> c.freedMs() == null)
                .map(Contact::fromMs)
                .min(Comparator.naturalOrder());
    }

    private static String reason(AttemptNow now) {
        return Objects.requireNonNullElse(now.voidReason(), "");
    }

    private static long orZero(@Nullable Long ms) {
        return ms == null ? 0 : ms;
    }
}
