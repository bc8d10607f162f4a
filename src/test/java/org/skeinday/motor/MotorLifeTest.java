package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What may be done to a motor when, and how long it waits (domain: motor life; common practice). */
class MotorLifeTest {
    private static MotorAdded motor(int uses) {
        return new MotorAdded("m", "A3", "b", "Reedbank Rotors", "cw", 450, "450 mm", 1.5, "1.5 g", null, uses);
    }

    private static MotorLife at(MotorStage stage) {
        return life(stage, null, 0, false);
    }

    private static MotorLife life(MotorStage stage, @Nullable Wait wait, long shiftMs, boolean handedIn) {
        var step = new MotorStep(
                "s",
                "m",
                "rest",
                stage.word(),
                1_000_000,
                null,
                "laptop",
                wait == null ? null : wait.name(),
                wait == null ? null : wait.minimumS(),
                wait == null ? null : wait.preferredS(),
                wait == null ? null : wait.maximumS(),
                wait != null && wait.required(),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
        return new MotorLife(motor(1), step, handedIn, shiftMs);
    }

    @Test
    void a_new_motor_is_weighed_and_a_used_one_ready_when_nothing_was_noted() {
        assertEquals(MotorStage.WEIGHED, new MotorLife(motor(0), null, false, 0).stage());
        assertEquals(MotorStage.READY, new MotorLife(motor(1), null, false, 0).stage());
    }

    @Test
    void the_usual_order_leads_from_the_cut_loop_to_one_that_can_be_wound() {
        MotorStage stage = MotorStage.CUT;
        StringBuilder way = new StringBuilder(stage.word());
        for (Optional<MotorDeed> next = at(stage).next();
                next.isPresent();
                next = at(stage).next()) {
            assertTrue(next.get().isAllowedFrom(stage), "what is offered must be allowed: " + next);
            stage = next.get().to();
            way.append(", ").append(stage.word());
        }
        assertEquals("cut, weighed, lubricated, conditioned, resting, ready", way.toString());
    }

    @ParameterizedTest
    @EnumSource(MotorStage.class)
    void what_is_offered_is_allowed_and_everything_allowed_is_offered_once(MotorStage stage) {
        MotorLife life = at(stage);
        long offered = life.others().size() + life.next().stream().count();
        assertEquals(
                Arrays.stream(MotorDeed.values())
                        .filter(d -> life.whyNot(d).isEmpty())
                        .count(),
                offered);
    }

    @ParameterizedTest
    @CsvSource({
        "GRITTY,false",
        "WASHED,false",
        "CUT,false",
        "WEIGHED,false",
        "BROKEN,false",
        "LOST,false",
        "RETIRED,false",
        "WOUND,false",
        "ON_MODEL,false",
        "FLOWN,false",
        "LUBRICATED,true",
        "CONDITIONED,true",
        "RESTING,true",
        "READY,true",
        "RUN_BACK,true"
    })
    void a_motor_is_wound_only_lubricated_whole_and_unwound(MotorStage stage, boolean may) {
        assertEquals(may, at(stage).whyNot(MotorDeed.WIND).isEmpty());
    }

    @Test
    void a_gritty_motor_says_what_has_to_be_done_first() {
        assertEquals(
                "A3 is gritty: wash it with mild soap, dry and lubricate it before any winding",
                at(MotorStage.GRITTY).whyNotFlown().orElseThrow());
        assertTrue(at(MotorStage.WEIGHED).whyNotFlown().isEmpty(), "work that nobody noted holds nothing up");
    }

    @ParameterizedTest
    @EnumSource(MotorDeed.class)
    void nothing_is_done_to_a_motor_that_is_handed_in(MotorDeed deed) {
        MotorLife life = life(MotorStage.READY, null, 0, true);
        assertTrue(life.whyNot(deed).orElseThrow().contains("given back"));
        assertTrue(life.others().isEmpty() && life.next().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({
        "0,TOO_EARLY",
        "59999,TOO_EARLY",
        "60000,EARLY",
        "119999,EARLY",
        "120000,GOOD",
        "300000,GOOD",
        "300001,TOO_LATE"
    })
    void a_wait_is_judged_on_both_sides_of_each_limit(long waitedMs, Wait.Verdict verdict) {
        assertEquals(verdict, new Wait("rest", 60, 120, 300, true).after(waitedMs));
    }

    @ParameterizedTest
    @CsvSource({"true,59999,true", "true,60000,false", "false,59999,false"})
    void only_a_required_minimum_cut_short_needs_a_reason(boolean required, long waitedMs, boolean needs) {
        MotorLife life = life(MotorStage.RESTING, new Wait("rest", 60, 120, null, required), 0, false);
        assertEquals(needs, life.needsReason(MotorDeed.READY_NOW, 1_000_000 + waitedMs));
        assertFalse(life.needsReason(MotorDeed.FALL, 1_000_000 + waitedMs), "an accident needs none");
    }

    @Test
    void a_clock_that_was_set_changes_nothing_of_how_long_it_waited() {
        long hour = 3_600_000;
        MotorLife life = life(MotorStage.RESTING, new Wait("rest", 60, 120, null, true), hour, false);
        assertEquals(
                90_000L,
                life.waited(MotorDeed.READY_NOW, 1_000_000 + hour + 90_000).orElseThrow());
        MotorLife back = life(MotorStage.RESTING, new Wait("rest", 60, 120, null, true), -hour, false);
        assertEquals(
                90_000L,
                back.waited(MotorDeed.READY_NOW, 1_000_000 - hour + 90_000).orElseThrow());
    }

    @ParameterizedTest
    @CsvSource({"nap,0,1,", "rest,-1,1,", "rest,10,9,", "rest,0,10,9", "rest,0,86401,"})
    void a_wait_out_of_order_is_refused(String name, int least, int wished, @Nullable Integer longest) {
        assertThrows(IllegalArgumentException.class, () -> new Wait(name, least, wished, longest, false));
    }
}
