package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class CautionsTest {
    private static List<String> shown(Moment moment, Set<String> met) {
        return Cautions.at(moment, met).stream()
                .map(s -> s.caution().id() + (s.inFull() ? " in full" : ""))
                .toList();
    }

    @Test
    void the_venue_and_the_supervising_adult_come_first() {
        assertEquals(
                List.of("venue-rules in full", "supervising-adult in full"), shown(Moment.WINDING_PLACE, Set.of()));
    }

    @Test
    void what_a_person_has_not_met_today_comes_before_what_was_met() {
        assertEquals(
                List.of("eyes in full", "past-the-ends in full"),
                shown(Moment.WINDING_PLACE, Set.of("venue-rules", "supervising-adult")));
        assertEquals(
                List.of("mount in full", "venue-rules"),
                shown(Moment.WINDING_PLACE, Set.of("venue-rules", "supervising-adult", "eyes", "past-the-ends")));
    }

    @Test
    void what_was_met_today_is_one_line_and_at_most_two_stand_at_once() {
        Set<String> all = Cautions.all().stream().map(Caution::id).collect(Collectors.toSet());
        for (Moment moment : Moment.values()) {
            List<Cautions.Shown> shown = Cautions.at(moment, all);
            assertTrue(shown.size() <= 2, moment.word());
            assertTrue(shown.stream().noneMatch(Cautions.Shown::inFull), moment.word());
            assertTrue(Cautions.at(moment, Set.of()).stream().allMatch(Cautions.Shown::inFull), moment.word());
        }
    }

    @Test
    void in_time_everyone_meets_each_caution_of_a_moment() {
        for (Moment moment : EnumSet.complementOf(EnumSet.of(Moment.RELEASE))) {
            Set<String> met = new HashSet<>();
            for (int visit = 0; visit < 5; visit++) {
                Cautions.at(moment, met).forEach(s -> met.add(s.caution().id()));
            }
            Set<String> there = Cautions.all().stream()
                    .filter(c -> c.moments().contains(moment))
                    .map(Caution::id)
                    .collect(Collectors.toSet());
            assertEquals(there, met, moment.word());
        }
    }

    @Test
    void nothing_is_shown_between_the_first_crank_turn_and_release() {
        assertEquals(List.of(), shown(Moment.RELEASE, Set.of()));
        assertTrue(Cautions.all().stream().noneMatch(c -> c.moments().contains(Moment.RELEASE)));
    }

    @Test
    void each_hazard_has_a_caution_and_each_id_stands_once() {
        assertEquals(
                EnumSet.allOf(Hazard.class),
                Cautions.all().stream()
                        .map(Caution::hazard)
                        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Hazard.class))));
        assertEquals(
                Cautions.all().size(),
                Cautions.all().stream().map(Caution::id).distinct().count());
    }

    @Test
    void what_bites_at_a_phase_is_said_in_one_sentence_from_one_place() {
        assertEquals(
                "Goggles stay on until release, and are on again for running back.", Cautions.words(Cautions.GOGGLES));
        assertEquals("Nobody walks while looking up.", Cautions.words(Cautions.LOOKING_UP));
        assertEquals("A landed motor is live until it is off and counted back.", Cautions.words(Cautions.LANDED));
        assertEquals("Dripped lubricant is wiped off the floor at once.", Cautions.words(Cautions.DRIPPED));
        assertThrows(IllegalArgumentException.class, () -> Cautions.words("hats"));
    }

    @Test
    void a_caution_says_one_sentence_of_what_and_one_of_why() {
        Set<Moment> once = Set.of(Moment.ARRIVAL);
        new Caution("a", Hazard.VENUE, once, "Ask.", "They know.");
        assertThrows(
                IllegalArgumentException.class,
                () -> new Caution("a", Hazard.VENUE, once, "Ask. Then ask again.", "They know."));
        assertThrows(IllegalArgumentException.class, () -> new Caution("a", Hazard.VENUE, once, "Ask.", "they know"));
        assertThrows(
                IllegalArgumentException.class, () -> new Caution("a", Hazard.VENUE, Set.of(), "Ask.", "They know."));
    }
}
