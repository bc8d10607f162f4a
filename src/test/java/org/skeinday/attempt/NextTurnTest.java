package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Whose attempt comes next, by windows and plan. */
class NextTurnTest {
    private static final long NOW = 1_000_000_000L;
    private static final long MINUTE = 60_000;

    private static NextTurn.Turn turn(String entry, int opens, int closes, Long planned) {
        return new NextTurn.Turn(
                entry,
                NOW + opens * MINUTE,
                NOW + closes * MINUTE,
                planned == null ? null : (Long) (NOW + planned * MINUTE));
    }

    private static String next(NextTurn.Turn... turns) {
        return new NextTurn(Comparator.comparing(NextTurn.Turn::entry), NOW)
                .of(List.of(turns))
                .orElseThrow()
                .entry();
    }

    @Test
    void an_open_window_comes_before_one_that_opens_later() {
        assertEquals("open", next(turn("open", -8, 46, null), turn("later", 13, 25, null)));
        assertEquals("open", next(turn("later", 13, 25, null), turn("open", -8, 46, null)));
    }

    @Test
    void one_that_opens_before_an_attempt_could_be_over_and_closes_earlier_goes_first() {
        assertEquals("soon", next(turn("open", -8, 46, null), turn("soon", 6, 18, null)));
        assertEquals("open", next(turn("open", -8, 46, null), turn("soon", 6, 50, null)));
    }

    @Test
    void of_open_ones_and_of_those_to_come_the_one_that_closes_first() {
        assertEquals("b", next(turn("a", -8, 46, null), turn("b", -1, 12, null)));
        assertEquals("b", next(turn("a", 20, 46, null), turn("b", 22, 40, null)));
    }

    @Test
    void what_is_planned_comes_as_planned_and_before_what_opens_after_it() {
        assertEquals("own", next(turn("own", -8, 46, 0L), turn("soon", 6, 18, null)));
        assertEquals("soon", next(turn("own", -8, 46, 10L), turn("soon", 6, 18, null)));
        assertEquals("first", next(turn("own", -8, 46, 10L), turn("first", 5, 90, 9L)));
    }

    @Test
    void without_a_window_the_given_order_holds() {
        assertEquals("a", next(new NextTurn.Turn("b", null, null, null), new NextTurn.Turn("a", null, null, null)));
    }
}
