package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.skeinday.timing.Contact;
import org.skeinday.timing.HoldRule;
import org.skeinday.timing.WatchReading;

class MarksTest {
    private final List<WatchMarked> made = new ArrayList<>();

    private String mark(int slot, WatchMark what, Long ms, String about) {
        String id = "m" + made.size();
        made.add(new WatchMarked(id, "a", slot, what.word(), ms, about, 1_000 + made.size(), 5L, null));
        return id;
    }

    private void mark(int slot, WatchMark what, long ms) {
        mark(slot, what, ms, null);
    }

    private static ReadingTaken reading(int slot, long ms, String corrects) {
        return new ReadingTaken("r" + slot + ms, "a", slot, "device", null, ms, 5_000L, corrects, null, null);
    }

    @Test
    void the_first_release_that_stands_counts() {
        mark(2, WatchMark.RELEASED, 0);
        mark(1, WatchMark.RELEASED, 0);
        assertEquals(2, new Marks(made).release(Set.of()).orElseThrow().slot());
        mark(2, WatchMark.NOT_RELEASED, 900);
        assertEquals(1, new Marks(made).release(Set.of()).orElseThrow().slot());
        mark(1, WatchMark.NOT_RELEASED, 900);
        assertEquals(Optional.empty(), new Marks(made).release(Set.of()));
        mark(1, WatchMark.RELEASED, 0);
        assertEquals(1_004, new Marks(made).release(Set.of()).orElseThrow().atMs());
    }

    @Test
    void contacts_of_an_earlier_press_for_the_release_are_not_of_this_flight() {
        mark(1, WatchMark.RELEASED, 0);
        mark(1, WatchMark.TOUCHED, 500);
        mark(1, WatchMark.NOT_RELEASED, 900);
        mark(1, WatchMark.RELEASED, 0);
        assertEquals("", new Marks(made).contacts(1));
        mark(1, WatchMark.TOUCHED, 2_400);
        assertEquals("touched at 0:02.4", new Marks(made).contacts(1));
        assertEquals(Optional.of(2_400L), new Marks(made).firstContactMs());
        assertEquals("", new Marks(made).contacts(2));
    }

    @Test
    void held_lasts_until_free_and_a_contact_taken_back_was_none() {
        mark(1, WatchMark.RELEASED, 0);
        mark(1, WatchMark.HELD, 10_000);
        mark(1, WatchMark.HELD, 11_000);
        assertEquals(
                List.of(new Contact("", 10_000, null)), new Marks(made).held(1), "the second press says nothing new");
        mark(1, WatchMark.FREE, 13_000);
        mark(1, WatchMark.FREE, 14_000);
        String wrong = mark(1, WatchMark.HELD, 20_000L, null);
        mark(1, WatchMark.TAKEN_BACK, 21_000L, wrong);
        assertEquals(List.of(new Contact("", 10_000, 13_000L)), new Marks(made).held(1));
    }

    @Test
    void a_watch_flies_on_until_the_landing_that_puts_its_mistake_right() {
        mark(1, WatchMark.RELEASED, 0);
        assertFalse(new Marks(made).fliesOn(1, List.of()));
        mark(1, WatchMark.STILL_FLYING, 31_000L, "wrong");
        assertTrue(new Marks(made).fliesOn(1, List.of()));
        assertTrue(new Marks(made).fliesOn(1, List.of(reading(1, 1, null), reading(2, 2, "wrong"))));
        assertFalse(new Marks(made).fliesOn(1, List.of(reading(1, 61_000, "wrong"))));
        assertFalse(new Marks(made).fliesOn(2, List.of()));
    }

    @Test
    void the_hold_of_the_rules_changes_the_reading_at_the_millisecond() {
        mark(1, WatchMark.RELEASED, 0);
        mark(1, WatchMark.HELD, 50_000);
        assertEquals(59_999, counted(59_999, HoldRule.TEN_SECONDS));
        assertEquals(50_000, counted(60_000, HoldRule.TEN_SECONDS));
        assertEquals(60_000, counted(60_000, null), "rules that say nothing of it");
        assertEquals(49_999, counted(49_999, HoldRule.TEN_SECONDS), "a contact after the stop is none");
    }

    private long counted(long ms, HoldRule rule) {
        var timed = new Timed(List.of(reading(1, ms, null)), List.of(), new Marks(made));
        WatchReading watch =
                Readings.watches(timed, Optional.ofNullable(rule)).readings().get(0);
        return ((WatchReading.Counted) watch).time().millis();
    }

    /** A laptop whose clock was set back, and taps that came in late: what was pressed after the release is of this flight. */
    @Test
    void the_records_order_counts_and_not_what_clocks_say() {
        made.add(new WatchMarked("a", "a", 1, "released", null, null, 9_000_000, 5L, null));
        made.add(new WatchMarked("b", "a", 1, "held", 20_000L, null, 5_000, 5L, null));
        made.add(new WatchMarked("c", "a", 1, "free", 26_000L, null, 9_000_001, null, null));
        assertEquals(List.of(new Contact("", 20_000, 26_000L)), new Marks(made).held(1));
        made.add(new WatchMarked("d", "a", 1, "not-released", 30_000L, null, 10, 5L, null));
        assertEquals(Optional.empty(), new Marks(made).release(Set.of()));
    }

    /** Two devices had the place, and their taps came in mixed: contacts lie one after the other all the same. */
    @Test
    void contacts_that_came_in_mixed_are_put_in_the_order_of_the_flight() {
        mark(1, WatchMark.RELEASED, 0);
        mark(1, WatchMark.HELD, 30_000);
        mark(1, WatchMark.FREE, 12_000);
        mark(1, WatchMark.HELD, 10_000);
        assertEquals(List.of(new Contact("", 10_000, 12_000L), new Contact("", 30_000, null)), new Marks(made).held(1));
    }

    @Test
    void a_watch_that_was_judged_failed_says_nothing_of_the_release() {
        mark(3, WatchMark.RELEASED, 0);
        mark(1, WatchMark.RELEASED, 0);
        assertEquals(3, new Marks(made).release(Set.of()).orElseThrow().slot());
        assertEquals(1, new Marks(made).release(Set.of(3)).orElseThrow().slot());
    }

    @Test
    void a_key_that_no_watch_has_and_a_fourth_watch_are_refused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new WatchMarked("m", "a", 1, "sneezed", null, null, 0, null, null));
        assertThrows(
                IllegalArgumentException.class, () -> new WatchMarked("m", "a", 4, "ready", null, null, 0, null, null));
    }
}
