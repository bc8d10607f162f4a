package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.FlightRules;

/** The large key is the way on, never the way back. */
class CardActsTest {
    private static List<String> keys(AttemptPhase phase, boolean stopped) {
        var live = new LiveAttempt("a", "e", AttemptNumber.plain(1), null, "m", 1, DayKind.HOSTING, phase, null);
        return CardActs.deeds(live, FlightRules.usual("event"), Optional.empty(), false, stopped, 0).stream()
                .map(NowView.Deed::word)
                .toList();
    }

    @Test
    void in_the_air_landed_comes_first_and_when_landed_the_official_time() {
        assertEquals(
                "Landed", keys(new AttemptPhase.InTheAir(0, null, false), false).get(0));
        assertEquals(
                "Take the official time",
                keys(new AttemptPhase.Landed(0, 2, 2, null), false).get(0));
        assertEquals("Start winding", keys(new AttemptPhase.Called(0, 1), false).get(0));
        assertEquals("Released", keys(new AttemptPhase.Holding(0, 1), false).get(0));
    }

    @Test
    void while_a_model_is_held_what_becomes_of_it_stands_beside_the_way_on() {
        assertEquals(
                List.of("Landed", "Free again", "Still held", "Not released after all", "Broke"),
                keys(new AttemptPhase.InTheAir(0, 4_000L, false), false));
        assertEquals(
                List.of("Landed", "Not released after all", "Broke", "Caught by the building", "Caught by somebody"),
                keys(new AttemptPhase.InTheAir(0, null, false), false));
    }

    @Test
    void while_the_hall_stands_still_no_key_puts_turns_on() {
        assertEquals(List.of("Released", "Broke"), keys(new AttemptPhase.Holding(0, 1), true));
        assertEquals(List.of("Released"), keys(new AttemptPhase.Called(0, 1), true));
    }
}
