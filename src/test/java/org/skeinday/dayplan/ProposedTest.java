package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.attempt.Part;

/** Proposals on small days, a change tried, and a whole day of eight entries that goes wrong at random. */
class ProposedTest {
    private static final Effort EFFORT = new Effort(0.4, 0.006);

    private static AttemptAhead attempt(String entry, int number, long opens, long closes) {
        return AttemptAhead.of(entry, number, opens, closes, Map.of());
    }

    private static Proposed of(Scenario day, long now, DayPlan inForce) {
        return Proposed.of(day, now, inForce, EFFORT, TimeWords.NUMBERS);
    }

    private static Scenario day(AttemptAhead... attempts) {
        return new Scenario(List.of(attempts), Map.of(), EventSetting.smallest(), ParallelTasks.NOTHING);
    }

    @Test
    void everything_that_fits_is_planned_and_nothing_is_left_out() {
        Proposed proposed = of(day(attempt("A", 1, 300, 3_000), attempt("A", 2, 300, 3_000)), 0, null);
        assertEquals(List.of(), proposed.leftOut());
        assertEquals(
                List.of(),
                PlanCheck.faults(proposed.problem(), proposed.outcome().plan()));
    }

    /** By hand: preparing 300 and winding 240 s, loading 45 s: the first can be released at 585 at the earliest. */
    @Test
    void the_last_attempts_are_given_up_first_with_reasons() {
        Scenario day = day(attempt("A", 1, 0, 585), attempt("A", 2, 0, 585));
        Proposed proposed = of(day, 0, null);
        assertEquals(List.of("A 2"), proposed.leftOut());
        assertFalse(proposed.conflict().isEmpty());
        assertNotNull(proposed.outcome().plan());
        assertEquals(List.of("A 1"), of(day(attempt("A", 1, 0, 584)), 0, null).leftOut(), "one second less");
    }

    @Test
    void a_change_is_only_supposed() {
        Scenario day = day(attempt("A", 1, 600, 3_000), attempt("B", 1, 600, 3_000));
        Scenario later = day.with(new Scenario.Change(Scenario.What.WINDOW_MOVES, "A", 5));
        assertEquals(900, later.attempts().get(0).opens());
        assertEquals(3_300, later.attempts().get(0).closes());
        assertEquals(600, later.attempts().get(1).opens());
        assertEquals(600, day.attempts().get(0).opens());
        assertEquals(
                List.of("B 1"),
                day.with(new Scenario.Change(Scenario.What.ATTEMPT_OUT, "A 1", 0))
                        .ids());
        Scenario longer = day.with(new Scenario.Change(Scenario.What.PART_LONGER, "wind", 2));
        assertEquals(360, longer.estimates().get(Part.WIND).careful());
        assertThrows(IllegalArgumentException.class, () -> new Scenario.Change(Scenario.What.WINDOW_MOVES, "A", 601));
    }

    @Test
    void a_motor_that_is_out_goes_unless_it_is_the_only_one_or_wound_already() {
        AttemptAhead two = AttemptAhead.of("A", 1, null, null, new TreeMap<>(Map.of("M1", 0, "M2", 1)));
        AttemptAhead one = AttemptAhead.of("B", 1, null, null, new TreeMap<>(Map.of("M1", 0)));
        Scenario out = day(two, one).with(new Scenario.Change(Scenario.What.MOTOR_OUT, "M1", 0));
        assertEquals(List.of("M2"), List.copyOf(out.attempts().get(0).motors().keySet()));
        assertEquals(List.of("M1"), List.copyOf(out.attempts().get(1).motors().keySet()));
    }

    @Test
    void what_is_late_is_pushed_through_the_plan_and_only_a_minute_is_worth_a_new_one() {
        Scenario day = day(attempt("A", 1, 600, 6_000));
        DayPlan plan = of(day, 0, null).outcome().plan();
        long begins = plan.start("A 1 prepare");
        assertFalse(of(day, begins, plan).isWorthTaking(problem(day, begins, plan), 60));
        long late = plan.start("A 1 prepare") + 500;
        Slip slip = Slip.of(problem(day, late, plan));
        assertEquals(500, slip.later().get("A 1 prepare"));
        assertTrue(of(day, late, plan).isWorthTaking(problem(day, late, plan), 60));
    }

    private static PlanProblem problem(Scenario day, long now, DayPlan inForce) {
        return EventChains.of(day.attempts(), day.estimates(), day.setting(), now, inForce);
    }

    /** Eight entries, two attempts each, every part up to twice as long as planned: each new plan keeps what is asked. */
    @ParameterizedTest
    @MethodSource("org.skeinday.Seeds#several")
    void a_day_that_goes_wrong_is_played_to_its_end_with_valid_plans(long seed) {
        Random random = new Random(seed);
        Map<String, List<AttemptAhead.Begun>> begun = new TreeMap<>();
        Map<String, Integer> flown = new TreeMap<>();
        DayPlan inForce = null;
        long now = 0;
        int plans = 0;
        for (int round = 0; round < 200 && total(flown) < 16; round++) {
            Scenario day = new Scenario(ahead(begun, flown), Map.of(), EventSetting.smallest(), ParallelTasks.NOTHING);
            Proposed proposed = of(day, now, inForce);
            DayPlan plan = proposed.outcome().plan();
            assertNotNull(plan, "windows are wide: there always is a plan, round " + round);
            assertEquals(List.of(), PlanCheck.faults(proposed.problem(), plan));
            plans++;
            inForce = plan;
            now = step(day, plan, begun, flown, random);
        }
        assertEquals(16, total(flown), "all were flown, with " + plans + " plans");
    }

    private static int total(Map<String, Integer> flown) {
        return flown.values().stream().mapToInt(Integer::intValue).sum();
    }

    private static List<AttemptAhead> ahead(Map<String, List<AttemptAhead.Begun>> begun, Map<String, Integer> flown) {
        List<AttemptAhead> ahead = new ArrayList<>();
        for (int entry = 0; entry < 8; entry++) {
            String name = "E" + entry;
            for (int number = flown.getOrDefault(name, 0) + 1; number <= 2; number++) {
                AttemptAhead one = attempt(name, number, entry * 600L, 100_000);
                ahead.add(new AttemptAhead(
                        name,
                        number,
                        one.opens(),
                        one.closes(),
                        true,
                        one.motors(),
                        begun.getOrDefault(one.id(), List.of())));
            }
        }
        return ahead;
    }

    /** What the plan starts next is done, and takes as long as chance will: a wound motor goes straight on. @return its end */
    private static long step(
            Scenario day,
            DayPlan plan,
            Map<String, List<AttemptAhead.Begun>> begun,
            Map<String, Integer> flown,
            Random random) {
        AttemptAhead next = null;
        long start = Long.MAX_VALUE;
        for (AttemptAhead attempt : day.attempts()) {
            long at = plan.start(
                    EventChains.task(attempt, Part.values()[attempt.begun().size()]));
            if (at < start) {
                start = at;
                next = attempt;
            }
        }
        assertNotNull(next);
        List<AttemptAhead.Begun> done = new ArrayList<>(next.begun());
        do {
            Part part = Part.values()[done.size()];
            long end = start + part.defaultSeconds() + random.nextInt((int) part.defaultSeconds());
            done.add(new AttemptAhead.Begun(part, start, end));
            start = end;
        } while (done.size() == Part.LOAD.ordinal() || done.size() == Part.FLY.ordinal());
        begun.put(next.id(), done);
        if (done.size() == Part.values().length) {
            flown.merge(next.entry(), 1, Integer::sum);
            begun.remove(next.id());
        }
        return start;
    }
}
