package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class CrankTurnsTest {
    @Test
    void turns_are_0_to_10_000_and_nothing_typed_is_nothing_counted() {
        assertNull(CrankTurns.whole("  "));
        assertNull(CrankTurns.part(""));
        assertEquals(0, CrankTurns.whole("0"));
        assertEquals(10_000, CrankTurns.whole(" 10000 "));
        assertEquals(10_000, CrankTurns.part("10000"));
        for (String wrong : new String[] {"10001", "-1", "2.5", "many", "123456"}) {
            assertThrows(IllegalArgumentException.class, () -> CrankTurns.whole(wrong), wrong);
        }
        for (String wrong : new String[] {"10000.01", "-1", "2.555", "a"}) {
            assertThrows(IllegalArgumentException.class, () -> CrankTurns.part(wrong), wrong);
        }
    }

    @Test
    void halves_may_have_a_comma() {
        assertEquals(2.5, CrankTurns.part("2,5"));
        assertEquals(22.25, CrankTurns.part("22.25"));
    }
}
