package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.motor.BreakPlace;

/** From every moment there is a way to the end, and whoever has the motor in hand has no key. */
class AttemptActsTest {
    static List<AttemptPhase> all() {
        return List.of(
                new AttemptPhase.Next(),
                new AttemptPhase.Called(1, 1),
                new AttemptPhase.Called(1, 2),
                new AttemptPhase.Winding(1, 1),
                new AttemptPhase.Holding(1, 1),
                new AttemptPhase.Broke(1, "m", false, null, false),
                new AttemptPhase.Broke(1, "m", true, null, false),
                new AttemptPhase.Broke(1, "m", true, BreakPlace.KNOT, false),
                new AttemptPhase.Broke(1, "m", false, null, true),
                new AttemptPhase.Broke(1, "m", true, null, true),
                new AttemptPhase.RunBack(1, "m"),
                new AttemptPhase.InTheAir(1, null, false),
                new AttemptPhase.InTheAir(1, 4_000L, true),
                new AttemptPhase.Landed(1, 1, 2, null),
                new AttemptPhase.Landed(1, 1, 2, 3_000L),
                new AttemptPhase.Official(1, 61_200, 2),
                new AttemptPhase.Abandoned(1, "late"),
                new AttemptPhase.DeclaredVoid(1, "wrong model", true));
    }

    @Test
    void the_phases_asked_here_are_all_that_there_are() {
        Set<AttemptPhase.Name> asked = all().stream().map(AttemptPhase::name).collect(Collectors.toSet());
        assertEquals(EnumSet.allOf(AttemptPhase.Name.class), asked);
    }

    @ParameterizedTest
    @MethodSource("all")
    void every_phase_that_is_not_over_offers_the_captain_a_way_on_and_a_way_out(AttemptPhase phase) {
        Set<AttemptAct> acts = AttemptActs.of(phase, Hands.CAPTAIN);
        if (phase.name().isOver()) {
            return;
        }
        assertTrue(acts.stream().anyMatch(AttemptAct::leadsOn), phase + " " + acts);
        boolean begun = phase.name() != AttemptPhase.Name.NEXT;
        boolean peopleFirst = phase instanceof AttemptPhase.Broke broke && broke.where() == null;
        assertTrue(!begun || peopleFirst || acts.stream().anyMatch(AttemptAct::leadsOut), phase + " " + acts);
    }

    @ParameterizedTest
    @MethodSource("all")
    void the_captain_may_do_whatever_others_may(AttemptPhase phase) {
        for (Hands hands : Hands.values()) {
            Set<AttemptAct> acts = AttemptActs.of(phase, hands);
            assertTrue(AttemptActs.of(phase, Hands.CAPTAIN).containsAll(acts), phase + " " + hands + " " + acts);
        }
    }

    @ParameterizedTest
    @MethodSource("all")
    void whoever_winds_loads_or_releases_has_no_key_while_it_is_wound(AttemptPhase phase) {
        Set<AttemptAct> acts = AttemptActs.of(phase, Hands.ON_THE_MOTOR);
        boolean handsAreFree = phase.name() == AttemptPhase.Name.BROKE || phase.name() == AttemptPhase.Name.RUN_BACK;
        assertTrue(handsAreFree || acts.isEmpty(), phase + " " + acts);
    }

    @Test
    void after_a_break_people_come_first_then_where_then_the_spare() {
        assertEquals(
                Set.of(AttemptAct.PEOPLE_SAFE, AttemptAct.NOT_BROKEN),
                captain(new AttemptPhase.Broke(1, "m", false, null, false)));
        Set<AttemptAct> where = captain(new AttemptPhase.Broke(1, "m", true, null, false));
        assertTrue(where.contains(AttemptAct.SAY_WHERE) && !where.contains(AttemptAct.TAKE_SPARE), where.toString());
        Set<AttemptAct> spare = captain(new AttemptPhase.Broke(1, "m", true, BreakPlace.STRAND, false));
        assertEquals(Set.of(AttemptAct.TAKE_SPARE, AttemptAct.ABANDON, AttemptAct.NOT_BROKEN), spare);
        Set<AttemptAct> givenUp = captain(new AttemptPhase.Broke(1, "m", true, null, true));
        assertEquals(Set.of(AttemptAct.SAY_WHERE, AttemptAct.NOT_BROKEN), givenUp);
    }

    @Test
    void a_motor_in_the_air_breaks_once() {
        assertTrue(captain(new AttemptPhase.InTheAir(1, null, false)).contains(AttemptAct.BROKE));
        Set<AttemptAct> broken = captain(new AttemptPhase.InTheAir(1, null, true));
        assertFalse(broken.contains(AttemptAct.BROKE), broken.toString());
        assertTrue(
                broken.containsAll(Set.of(AttemptAct.SAY_WHERE, AttemptAct.NOT_BROKEN, AttemptAct.LANDED)),
                broken.toString());
    }

    @Test
    void what_is_wound_is_run_back_before_another_motor_is_taken() {
        for (AttemptPhase wound : List.of(new AttemptPhase.Winding(1, 1), new AttemptPhase.Holding(1, 1))) {
            assertFalse(captain(wound).contains(AttemptAct.TAKE_SPARE));
            assertTrue(captain(wound).contains(AttemptAct.RUN_BACK));
        }
        for (Hands hands : List.of(Hands.CAPTAIN, Hands.READER, Hands.ON_THE_MOTOR)) {
            assertEquals(
                    Set.of(AttemptAct.BROKE, AttemptAct.RUN_BACK),
                    AttemptActs.of(new AttemptPhase.RunBack(1, "m"), hands));
        }
    }

    @Test
    void whoever_looks_on_has_nothing_to_press() {
        all().forEach(phase -> assertEquals(Set.of(), AttemptActs.of(phase, Hands.NONE)));
    }

    private static Set<AttemptAct> captain(AttemptPhase phase) {
        return AttemptActs.of(phase, Hands.CAPTAIN);
    }
}
