package org.skeinday.motor;

import static org.skeinday.motor.MotorStage.BROKEN;
import static org.skeinday.motor.MotorStage.CONDITIONED;
import static org.skeinday.motor.MotorStage.CUT;
import static org.skeinday.motor.MotorStage.FLOWN;
import static org.skeinday.motor.MotorStage.GRITTY;
import static org.skeinday.motor.MotorStage.LOST;
import static org.skeinday.motor.MotorStage.LUBRICATED;
import static org.skeinday.motor.MotorStage.ON_MODEL;
import static org.skeinday.motor.MotorStage.READY;
import static org.skeinday.motor.MotorStage.RESTING;
import static org.skeinday.motor.MotorStage.RETIRED;
import static org.skeinday.motor.MotorStage.RUN_BACK;
import static org.skeinday.motor.MotorStage.WASHED;
import static org.skeinday.motor.MotorStage.WEIGHED;
import static org.skeinday.motor.MotorStage.WOUND;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What is done to a motor: from which stages, to which, and what has to be waited for afterwards. */
public enum MotorDeed {
    WEIGH("Weighed", WEIGHED, null, EnumSet.of(CUT)),
    LUBRICATE(
            "Lubricated",
            LUBRICATED,
            Wait.Name.SOAK,
            EnumSet.of(WEIGHED, LUBRICATED, CONDITIONED, RESTING, READY, RUN_BACK, WASHED)),
    CONDITION("Stretched, held", CONDITIONED, Wait.Name.HOLD, EnumSet.of(LUBRICATED)),
    REST("Laid to rest", RESTING, Wait.Name.REST, EnumSet.of(LUBRICATED, CONDITIONED, FLOWN, RUN_BACK, READY)),
    READY_NOW("Ready", READY, null, EnumSet.of(LUBRICATED, CONDITIONED, RESTING)),
    WIND("Wound", WOUND, null, EnumSet.of(LUBRICATED, CONDITIONED, RESTING, READY, RUN_BACK)),
    LOAD("On the model", ON_MODEL, null, EnumSet.of(WOUND)),
    FLY("Flown", FLOWN, null, EnumSet.of(WOUND, ON_MODEL)),
    UNWIND("Run back", RUN_BACK, null, EnumSet.of(WOUND, ON_MODEL, FLOWN)),
    WASH("Washed and dried", WASHED, null, EnumSet.of(GRITTY)),
    FALL("Fell on the floor", GRITTY, null, all(WOUND, ON_MODEL, GRITTY, BROKEN, LOST)),
    BREAK("Broke", BROKEN, null, all(CUT, WEIGHED, BROKEN, LOST)),
    LOSE("Lost", LOST, null, all(LOST, BROKEN)),
    FIND("Found", GRITTY, null, EnumSet.of(LOST)),
    RETIRE("Retire", RETIRED, null, all(WOUND, ON_MODEL, RETIRED, BROKEN, LOST)),
    RECALL("Take into use again", RUN_BACK, null, EnumSet.of(RETIRED));

    private final String words;
    private final MotorStage to;
    private final Wait.@Nullable Name waits;

    @SuppressWarnings("ImmutableEnumChecker") // Set.copyOf below
    private final Set<MotorStage> from;

    MotorDeed(String words, MotorStage to, Wait.@Nullable Name waits, Set<MotorStage> from) {
        this.words = words;
        this.to = to;
        this.waits = waits;
        this.from = Set.copyOf(from);
    }

    private static Set<MotorStage> all(MotorStage... but) {
        Set<MotorStage> stages = EnumSet.allOf(MotorStage.class);
        for (MotorStage stage : but) {
            stages.remove(stage);
        }
        return stages;
    }

    /** What the button says: that it is done. */
    public String words() {
        return words;
    }

    /** As the record keeps it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<MotorDeed> of(String word) {
        for (MotorDeed deed : values()) {
            if (deed.word().equals(word)) {
                return Optional.of(deed);
            }
        }
        return Optional.empty();
    }

    public MotorStage to() {
        return to;
    }

    /** What begins with it. */
    public Optional<Wait.Name> waits() {
        return Optional.ofNullable(waits);
    }

    public boolean isAllowedFrom(MotorStage stage) {
        return from.contains(stage);
    }

    /** Goes on with the work for which the motor waits: it ends the wait, perhaps too early. */
    boolean goesOn() {
        return switch (this) {
            case CONDITION, REST, READY_NOW, WIND -> true;
            case WEIGH, LUBRICATE, LOAD, FLY, UNWIND, WASH, FALL, BREAK, LOSE, FIND, RETIRE, RECALL -> false;
        };
    }
}
