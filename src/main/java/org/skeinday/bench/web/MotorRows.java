package org.skeinday.bench.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.Wait;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.UnitSystem;

/** Motors as rows of the Bench. */
final class MotorRows {
    private final UnitSystem units;
    private final ZoneId zone;
    private final long nowMs;
    private final long undoMs;

    MotorRows(UnitSystem units, ZoneId zone, long nowMs, long undoMs) {
        this.units = units;
        this.zone = zone;
        this.nowMs = nowMs;
        this.undoMs = undoMs;
    }

    /**
     * @param needs for which attempt, by motor id
     * @param uses so far
     */
    BenchView.Row row(MotorLife life, Map<String, String> needs, List<String> byHand, int uses) {
        MotorAdded motor = life.motor();
        MotorStep step = life.step();
        Wait wait = life.handedIn() ? null : life.waiting();
        long undo = step == null ? 0 : step.atMs() + undoMs;
        return new BenchView.Row(
                motor.id(),
                motor.tag(),
                life.handedIn() ? "handed in" : life.stage().word(),
                look(life),
                size(motor, uses),
                needs.getOrDefault(motor.id(), ""),
                step == null ? "" : step.id(),
                wait == null ? 0 : life.sinceMs() + wait.preferredS() * 1000L,
                wait == null ? "" : waits(life, wait),
                wait == null || wait.maximumS() == null ? 0 : life.sinceMs() + wait.maximumS() * 1000L,
                life.next().map(d -> List.of(deed(life, d))).orElse(List.of()),
                others(life),
                life.handedIn(),
                !life.handedIn() && !life.stage().isLoaded() && !life.stage().isOut(),
                byHand.contains(motor.id()),
                undo > nowMs ? undo : 0,
                step == null ? "" : step.stage());
    }

    private static String look(MotorLife life) {
        MotorStage stage = life.stage();
        if (life.handedIn() || stage.isOut()) {
            return "done";
        }
        return stage == MotorStage.GRITTY ? "late" : stage == MotorStage.READY || stage.isLoaded() ? "now" : "";
    }

    private String size(MotorAdded motor, int uses) {
        return units.length(Length.ofMillimetres(motor.loopMm())) + ", " + units.mass(Mass.ofGrams(motor.massG()))
                + ", " + motor.turns().withArrow() + ", "
                + MotorUses.words(uses);
    }

    private String waits(MotorLife life, Wait wait) {
        String what = switch (wait.name()) {
            case "soak" -> "soaks";
            case "hold" -> "held stretched";
            default -> "rests";
        };
        return what + " since " + PageWords.clock(life.sinceMs(), zone)
                + (wait.minimumS() > 0
                        ? ", at least " + BenchWords.minutes(wait.minimumS()) + (wait.required() ? " required" : "")
                        : "")
                + ", best " + BenchWords.minutes(wait.preferredS())
                + (wait.maximumS() == null ? "" : ", at most " + BenchWords.minutes(wait.maximumS()));
    }

    private List<BenchView.Deed> others(MotorLife life) {
        List<BenchView.Deed> deeds = new ArrayList<>();
        life.others().stream().map(d -> deed(life, d)).forEach(deeds::add);
        return List.copyOf(deeds);
    }

    private BenchView.Deed deed(MotorLife life, MotorDeed deed) {
        String ask = deed == MotorDeed.BREAK ? "break" : mayNeedReason(life, deed) ? "reason" : "";
        return new BenchView.Deed(deed.word(), deed.words(), ask, units.torqueUnitTyped());
    }

    /** Asked while the required wait runs; the server decides by its own clock. */
    private boolean mayNeedReason(MotorLife life, MotorDeed deed) {
        return life.needsReason(deed, nowMs);
    }

    /** What was done, by whom and when, with how long it had waited. */
    static String done(MotorStep step, @Nullable String who) {
        String waited = step.waitedMs() == null
                ? ""
                : String.format(Locale.ROOT, " after %d:%02d", step.waitedMs() / 60_000, step.waitedMs() / 1000 % 60);
        String turns = step.motorTurns() == null ? "" : ", at " + Math.round(step.motorTurns()) + " motor turns";
        String torque = step.torqueTyped() == null ? "" : ", " + step.torqueTyped();
        String why = step.reason() == null ? "" : " (" + step.reason() + ")";
        return step.stage() + waited + turns + torque + why + (who == null || who.isEmpty() ? "" : ", " + who);
    }
}
