package org.skeinday.motor;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where a motor stands and what may be done to it.
 *
 * @param step the last one, null when nothing was noted yet
 * @param shiftMs by how much the laptop's clock was set since then
 */
public record MotorLife(MotorAdded motor, @Nullable MotorStep step, boolean handedIn, long shiftMs) {

    /** Without a step a used motor counts as ready, a new one as weighed: its mass is known. */
    public MotorStage stage() {
        if (step != null) {
            return step.stageNow();
        }
        return motor.uses() > 0 ? MotorStage.READY : MotorStage.WEIGHED;
    }

    /** When the wait began, by the clock as it is now. */
    public long sinceMs() {
        return step == null ? 0 : step.atMs() + shiftMs;
    }

    public @Nullable Wait waiting() {
        return step == null ? null : step.waiting();
    }

    /** The one deed that the usual order brings next; empty when none is or the attempt has to bring it. */
    public Optional<MotorDeed> next() {
        if (handedIn) {
            return Optional.empty();
        }
        return Optional.ofNullable(
                switch (stage()) {
                    case CUT -> MotorDeed.WEIGH;
                    case WEIGHED, WASHED -> MotorDeed.LUBRICATE;
                    case LUBRICATED -> MotorDeed.CONDITION;
                    case CONDITIONED, RUN_BACK -> MotorDeed.REST;
                    case RESTING -> MotorDeed.READY_NOW;
                    case WOUND, ON_MODEL, FLOWN -> MotorDeed.UNWIND;
                    case GRITTY -> MotorDeed.WASH;
                    case LOST -> MotorDeed.FIND;
                    case READY, RETIRED, BROKEN -> null;
                });
    }

    /** Everything else that the stage allows. */
    public List<MotorDeed> others() {
        if (handedIn) {
            return List.of();
        }
        return Arrays.stream(MotorDeed.values())
                .filter(d ->
                        d.isAllowedFrom(stage()) && next().filter(d::equals).isEmpty())
                .toList();
    }

    /** Why this cannot be done now, in words; empty when it can. */
    public Optional<String> whyNot(MotorDeed deed) {
        if (handedIn) {
            return Optional.of(motor.tag() + " is handed in: it must be given back before anything is done to it");
        }
        if (deed.isAllowedFrom(stage())) {
            return Optional.empty();
        }
        return Optional.of(motor.tag() + " is " + stage().word() + reason(deed));
    }

    private String reason(MotorDeed deed) {
        boolean winds = deed == MotorDeed.WIND;
        return switch (stage()) {
            case GRITTY -> ": wash it with mild soap, dry and lubricate it before any winding";
            case WASHED -> winds ? ": lubricate it first, dry rubber breaks" : word(deed);
            case CUT, WEIGHED -> winds ? ": lubricate it first, dry rubber breaks" : word(deed);
            case WOUND, ON_MODEL -> ": run it back first";
            default -> word(deed);
        };
    }

    private static String word(MotorDeed deed) {
        return ", so it cannot become '" + deed.to().word() + "'";
    }

    /** Why an attempt must not be flown with it; empty when it may. Work that nobody noted holds nothing up. */
    public Optional<String> whyNotFlown() {
        return switch (stage()) {
            case GRITTY, BROKEN, LOST -> whyNot(MotorDeed.WIND);
            default -> handedIn ? whyNot(MotorDeed.WIND) : Optional.empty();
        };
    }

    /** How long it has waited when {@code deed} ends the wait; empty when nothing was waited for. */
    public Optional<Long> waited(MotorDeed deed, long atMs) {
        return waiting() == null || !deed.goesOn() ? Optional.empty() : Optional.of(Math.max(0, atMs - sinceMs()));
    }

    /**
     * The step that {@code deed} makes of this life.
     *
     * @param wait what begins with it, null when nothing is waited for
     */
    public MotorStep step(MotorDeed deed, MotorStep.By by, @Nullable Wait wait, MotorStep.Told told) {
        return new MotorStep(
                by.id(),
                motor.id(),
                deed.word(),
                deed.to().word(),
                by.atMs(),
                by.person(),
                by.device(),
                wait == null ? null : wait.name(),
                wait == null ? null : wait.minimumS(),
                wait == null ? null : wait.preferredS(),
                wait == null ? null : wait.maximumS(),
                wait != null && wait.required(),
                waited(deed, by.atMs()).orElse(null),
                told.reason(),
                told.motorTurns(),
                told.torqueNmm(),
                told.torqueTyped(),
                null,
                step == null ? null : step.id(),
                null,
                null);
    }

    /** Whether going on now must give a reason: a required wait is not over. */
    public boolean needsReason(MotorDeed deed, long atMs) {
        Wait wait = waiting();
        return wait != null
                && wait.required()
                && waited(deed, atMs)
                        .filter(ms -> wait.after(ms) == Wait.Verdict.TOO_EARLY)
                        .isPresent();
    }
}
