package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.units.EnumWords;

class StopRuleTest {
    @Test
    void the_words_are_those_of_the_record_and_of_files() {
        assertEquals(List.of("count", "torque", "breaking"), EnumWords.of(StopRule.class));
    }

    @Test
    void another_word_is_refused_and_never_taken_for_a_count() {
        String refusal = assertThrows(IllegalArgumentException.class, () -> StopRule.of("tension"))
                .getMessage();

        assertEquals("What ends the wind must be one of count, torque, breaking, but was 'tension'", refusal);
    }
}
