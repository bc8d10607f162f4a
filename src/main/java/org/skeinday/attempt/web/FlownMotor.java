package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.MotorCorrected;
import org.skeinday.attempt.RightTeam;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.attempt.store.MotorCorrections;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.PlainNumber;

/** With which motor an attempt was flown, what was corrected of that, and which others it can have been. */
final class FlownMotor {
    private FlownMotor() {}

    /** @param motor id of the one on record, empty for none @param others of its team */
    public record Shown(String motor, List<NowView.Choice> others) {}

    /** The motor, what was taken off it while it was held, and each correction with its reason. */
    static List<NowView.Line> lines(Tx tx, AttemptNow attempt, UnaryOperator<String> nameOf, ZoneId zone) {
        List<NowView.Line> lines = new ArrayList<>();
        tag(tx, attempt.motorId()).ifPresent(tag -> lines.add(new NowView.Line("motor", tag)));
        Optional.ofNullable(attempt.motorId())
                .map(motor -> BreakRecord.turnsOff(tx, attempt.id(), motor))
                .filter(turns -> turns > 0)
                .ifPresent(turns -> lines.add(new NowView.Line("taken off", PlainNumber.of(turns) + " crank turns")));
        for (MotorCorrected told : MotorCorrections.of(tx, attempt.id())) {
            lines.add(new NowView.Line(
                    "motor corrected",
                    tag(tx, told.motorId()).orElse("?") + " in place of "
                            + tag(tx, told.beforeId()).orElse("none") + " at " + PageWords.clock(told.atMs(), zone)
                            + (told.personId() == null ? "" : ", " + nameOf.apply(told.personId())) + ": "
                            + told.reason()));
        }
        return lines;
    }

    /** Null before the release, and for other teams, of whose motors nothing is known. */
    static @Nullable Shown shown(Tx tx, LiveAttempt attempt, boolean captain) {
        EntryAdded entry =
                EntryStore.find(tx, attempt.entryId()).filter(EntryAdded::own).orElse(null);
        if (!captain || entry == null || !attempt.phase().name().hasFlown()) {
            return null;
        }
        String motor = attempt.motorId() == null ? "" : attempt.motorId();
        return new Shown(
                motor,
                MotorStore.all(tx).stream()
                        .filter(one -> !one.id().equals(motor)
                                && RightTeam.whyNot(entry, one.tag(), one.team())
                                        .isEmpty())
                        .map(one -> new NowView.Choice(one.id(), one.tag()))
                        .toList());
    }

    private static Optional<String> tag(Tx tx, @Nullable String motor) {
        return Optional.ofNullable(motor).flatMap(id -> MotorStore.find(tx, id)).map(MotorAdded::tag);
    }
}
