package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.StopRule;

class WordTest {
    private static Word word(int level, @Nullable Double count) {
        return Word.of(level, 16, count, 200, StopRule.TORQUE);
    }

    @Test
    void two_marks_below_the_torque_limit_the_winder_slows_down_and_three_below_not_yet() {
        assertEquals(Word.NONE, word(13, null));
        assertEquals(Word.SLOWER, word(14, null));
        assertEquals(Word.SLOWER, word(15, null));
    }

    @Test
    void at_the_torque_limit_the_word_is_that_and_stays_so_above_it() {
        assertEquals(Word.TORQUE_LIMIT, word(16, null));
        assertEquals(Word.TORQUE_LIMIT, word(17, null));
    }

    @Test
    void ten_crank_turns_before_the_turns_limit_the_winder_slows_down() {
        assertEquals(Word.NONE, word(0, 189.9));
        assertEquals(Word.SLOWER, word(0, 190.0));
        assertEquals(Word.SLOWER, word(0, 199.9));
        assertEquals(Word.TURNS_LIMIT, word(0, 200.0));
        assertEquals(Word.TURNS_LIMIT, word(0, 201.0));
    }

    @Test
    void the_first_reached_of_torque_and_turns_limit_ends_the_wind_whatever_the_rule() {
        for (StopRule rule : new StopRule[] {StopRule.COUNT, StopRule.TORQUE}) {
            assertEquals(Word.TORQUE_LIMIT, Word.of(16, 16, 199.0, 200, rule));
            assertEquals(Word.TURNS_LIMIT, Word.of(15, 16, 200.0, 200, rule));
        }
    }

    @Test
    void when_both_are_reached_the_word_is_that_of_the_rule() {
        assertEquals(Word.TURNS_LIMIT, Word.of(16, 16, 200.0, 200, StopRule.COUNT));
        assertEquals(Word.TORQUE_LIMIT, Word.of(16, 16, 200.0, 200, StopRule.TORQUE));
    }

    @Test
    void what_is_not_known_gives_no_word() {
        assertEquals(Word.NONE, Word.of(99, null, null, 200, StopRule.TORQUE));
        assertEquals(Word.NONE, Word.of(99, null, 999.0, null, StopRule.COUNT));
        assertEquals(Word.TURNS_LIMIT, Word.of(99, null, 200.0, 200, StopRule.TORQUE));
        assertEquals(Word.TORQUE_LIMIT, Word.of(16, 16, null, null, StopRule.COUNT));
    }

    @Test
    void a_motor_that_is_wound_until_it_breaks_gets_no_word() {
        assertEquals(Word.NONE, Word.of(99, 16, 999.0, 200, StopRule.BREAKING));
    }

    @Test
    void the_words_are_these() {
        assertEquals(
                List.of("", "slower", "torque limit", "turns limit"),
                Arrays.stream(Word.values()).map(Word::text).toList());
    }

    /** Ceiling 8 N·mm at 0.5 a mark: mark 16. */
    @Test
    void a_wind_says_its_word_while_turns_go_on_and_none_after_the_stop() {
        WindFixture taps = new WindFixture().climb(16, 1_000);
        assertEquals(Word.NONE, taps.wind().word(13_999));
        assertEquals(Word.SLOWER, taps.wind().word(14_000));
        assertEquals(Word.TORQUE_LIMIT, taps.wind().word(16_000));
        assertEquals(Word.NONE, taps.phase(WindPhase.STOPPED, 17_000).wind().word(17_000));
        assertEquals(
                Word.TORQUE_LIMIT, taps.phase(WindPhase.AGAIN, 18_000).wind().word(18_000));
    }

    /** 2 crank turns a second: 190 after 95 s, 200 after 100 s. */
    @Test
    void a_wind_that_nobody_reads_says_the_count_from_its_estimate() {
        Wind wind = new WindFixture().phase(WindPhase.STEPPING_IN, 60_000).wind();
        assertEquals(Word.NONE, wind.word(94_900));
        assertEquals(Word.SLOWER, wind.word(95_000));
        assertEquals(Word.TURNS_LIMIT, wind.word(100_000));
    }
}
