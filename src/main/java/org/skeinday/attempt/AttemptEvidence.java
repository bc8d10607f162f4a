package org.skeinday.attempt;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.DayKind;
import org.skeinday.motor.BreakPlace;
import org.skeinday.winding.Wind;

/**
 * What the record knows of one attempt: all that its phase is made of. Read once for a page, in one snapshot.
 *
 * @param steps when it took its steps
 * @param winds of the attempt, in the order in which they were begun; the needle's marks are not among them
 * @param motorBrokeAtMs when its present motor broke, null while it did not
 * @param breaks what was told after motors of this attempt parted, each motor once
 * @param runBacks motors of this attempt that were run back, with the turns that were on, in order
 * @param turnsOn whether its motor was wound when it was given up and nobody has said that it was run back
 * @param timed its watches
 * @param watchesWanted as many as the rules ask for
 * @param signaturesMissing that are still owed for its time; 0 where none are asked for
 * @param windowOpenMs when the window that it flies in opened at an official's word; null while nobody tapped that, and where
 *     windows are those of the day
 */
public record AttemptEvidence(
        AttemptNow now,
        DayKind day,
        StepTimes steps,
        List<Wind> winds,
        @Nullable Long motorBrokeAtMs,
        List<BreakTold> breaks,
        List<TurnsRunBack> runBacks,
        boolean turnsOn,
        Timed timed,
        int watchesWanted,
        int signaturesMissing,
        @Nullable Long windowOpenMs) {
    /**
     * What people said after a motor parted. Moments are ms since 1970 UTC.
     *
     * @param safeAtMs when somebody said that everyone is unhurt and both ends are found; null while nobody did
     * @param where it parted, null until somebody looked
     * @param whereAtMs when they said so, null with {@code where}
     */
    public record BreakTold(
            String motorId,
            @Nullable Long safeAtMs,
            @Nullable BreakPlace where,
            @Nullable Long whereAtMs) {
        static BreakTold nothing(String motor) {
            return new BreakTold(motor, null, null, null);
        }

        public boolean peopleSafe() {
            return safeAtMs != null;
        }

        /** Only what was said of a break at this moment or later: an earlier one was a mistake and taken back. */
        BreakTold since(long brokeAtMs) {
            boolean looked = whereAtMs != null && whereAtMs >= brokeAtMs;
            return new BreakTold(
                    motorId,
                    safeAtMs == null || safeAtMs < brokeAtMs ? null : safeAtMs,
                    looked ? where : null,
                    looked ? whereAtMs : null);
        }

        /** When somebody spoke last. */
        long atMs() {
            return Math.max(safeAtMs == null ? 0 : safeAtMs, whereAtMs == null ? 0 : whereAtMs);
        }
    }

    public AttemptEvidence {
        winds = List.copyOf(winds);
        breaks = List.copyOf(breaks);
        runBacks = List.copyOf(runBacks);
    }

    /** Of a motor of this attempt; of the present one only what was said since it broke. Nothing while nobody spoke. */
    public BreakTold breakOf(String motor) {
        BreakTold told = breaks.stream()
                .filter(one -> one.motorId().equals(motor))
                .findFirst()
                .orElseGet(() -> BreakTold.nothing(motor));
        return motorBrokeAtMs != null && motor.equals(now.motorId()) ? told.since(motorBrokeAtMs) : told;
    }

    /**
     * Whether its motor broke between release and landing, of a flight whose time is not official yet: nobody was near, so
     * that nobody is asked for people, but somebody looks where it parted.
     */
    public boolean brokeInTheAir() {
        Long released = now.releasedAtMs();
        Long landed = now.landedAtMs();
        return (now.state() == State.RELEASED || now.state() == State.LANDED)
                && motorBrokeAtMs != null
                && released != null
                && motorBrokeAtMs >= released
                && (landed == null || motorBrokeAtMs <= landed);
    }

    /** When somebody answers now what is asked after a break of this motor: never before it, however the clock was set. */
    public long answerAtMs(String motor, long nowMs) {
        return motorBrokeAtMs != null && motor.equals(now.motorId()) ? Math.max(nowMs, motorBrokeAtMs) : nowMs;
    }

    /** Winds that ended before the present one: their motor broke, was changed, or was run back. */
    int windsOver() {
        long read = winds.stream().filter(this::isOver).count();
        long unread = runBacks.stream().filter(told -> told.windId() == null).count()
                + breaks.stream()
                        .filter(told -> !told.motorId().equals(now.motorId()))
                        .filter(told -> !isRead(told.motorId()) && !wasTakenBack(told))
                        .count();
        return (int) (read + unread);
    }

    /** The wind of the motor that it has now, as far as a reader taps one; never one that is over. */
    public Optional<Wind> presentWind() {
        return winds.stream().filter(wind -> !isOver(wind)).reduce((earlier, later) -> later);
    }

    /** Winds of other motors of this attempt that have their turns on still: not run back, not broken. */
    List<Wind> windsBeside() {
        return windsNotRunBack().stream()
                .filter(wind -> !wind.begun().motorId().equals(now.motorId()))
                .filter(wind -> wind.broke().isEmpty() && !isBroken(wind.begun().motorId()))
                .filter(this::isLastOfItsMotor)
                .toList();
    }

    private boolean isBroken(String motor) {
        return breaks.stream().anyMatch(told -> told.motorId().equals(motor) && !wasTakenBack(told));
    }

    /** Whether nothing came after this wind: it was not run back, and no later one is of the same motor. */
    public boolean isLastOfItsMotor(Wind wind) {
        return windsNotRunBack().stream()
                .filter(one -> one.begun().motorId().equals(wind.begun().motorId()))
                .reduce((earlier, later) -> later)
                .filter(last -> last.begun().id().equals(wind.begun().id()))
                .isPresent();
    }

    /** Winds that were not run back, in order. */
    public List<Wind> windsNotRunBack() {
        return winds.stream().filter(wind -> !isRunBack(wind)).toList();
    }

    private boolean isOver(Wind wind) {
        return !wind.begun().motorId().equals(now.motorId()) || isRunBack(wind);
    }

    /** Whether somebody said at this moment or later that a motor of this attempt was run back. */
    public boolean isRunBackSince(String motor, long atMs) {
        return runBacks.stream().anyMatch(told -> told.motorId().equals(motor) && told.atMs() >= atMs);
    }

    private boolean isRunBack(Wind wind) {
        return runBacks.stream().anyMatch(told -> wind.begun().id().equals(told.windId()));
    }

    /** The motor was whole after all: it was run back later, which is its one wind. */
    private boolean wasTakenBack(BreakTold told) {
        return runBacks.stream().anyMatch(back -> back.motorId().equals(told.motorId()) && back.atMs() >= told.atMs());
    }

    private boolean isRead(String motor) {
        return winds.stream().anyMatch(wind -> wind.begun().motorId().equals(motor));
    }
}
