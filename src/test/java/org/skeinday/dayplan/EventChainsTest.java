package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.Part;

class EventChainsTest {
    private static final AttemptAhead FIRST = AttemptAhead.of("Heron", 1, 600L, 1800L, Map.of("m1", 0, "m2", 1));
    private static final AttemptAhead SECOND = AttemptAhead.of("Heron", 2, 600L, 2400L, Map.of("m1", 0, "m2", 1));

    private static PlanProblem day(EventSetting setting, long now, AttemptAhead... attempts) {
        return EventChains.of(List.of(attempts), Map.of(), setting, now, null);
    }

    private static DayPlan plan(PlanProblem problem) {
        Outcome outcome = Planner.plan(problem, Goal.SLACK, Effort.live());
        assertEquals(Outcome.Status.OPTIMAL, outcome.status(), outcome::toString);
        assertEquals(List.of(), PlanCheck.faults(problem, outcome.plan()));
        return outcome.plan();
    }

    private static Task task(PlanProblem problem, AttemptAhead attempt, Part part) {
        return problem.byId().get(EventChains.task(attempt, part));
    }

    @Test
    void times_come_from_own_history_or_are_the_stated_default() {
        assertEquals(new Estimate(Part.WIND, 240, 240, 0), Estimate.of(Part.WIND, List.of(200L, 300L)));
        assertEquals(new Estimate(Part.WIND, 200, 280, 3), Estimate.of(Part.WIND, List.of(300L, 100L, 200L)));
        // Position 0.9 * 10 = 9 of eleven, from 0: the tenth.
        List<Long> eleven = List.of(11L, 1L, 2L, 3L, 4L, 5L, 6L, 7L, 8L, 9L, 10L);
        assertEquals(new Estimate(Part.FLY, 6, 10, 11), Estimate.of(Part.FLY, eleven));
        // Median 2.5 and 90th percentile 3.7, to the next longer second.
        assertEquals(new Estimate(Part.LOAD, 3, 4, 4), Estimate.of(Part.LOAD, List.of(1L, 2L, 3L, 4L)));
        assertThrows(IllegalArgumentException.class, () -> Estimate.of(Part.LOAD, List.of(1L, 2L, -3L)));
    }

    @Test
    void an_attempt_is_a_chain_inside_its_window() {
        DayPlan plan = plan(day(EventSetting.smallest(), 0, FIRST));
        long wind = plan.start("Heron 1 wind");
        assertEquals(600, wind, "winding begins when the window opens");
        assertTrue(plan.start("Heron 1 prepare") + 300 <= wind);
        assertEquals(wind + 240, plan.start("Heron 1 load"));
        assertEquals(wind + 285, plan.start("Heron 1 fly"), "no longer a hold than loading takes");
        assertEquals(plan.start("Heron 1 fly") + 150, plan.start("Heron 1 run back"));
        assertEquals("m1", plan.motors().get("Heron 1 wind"));
    }

    @Test
    void the_release_or_the_landing_lies_inside_as_the_rule_says() {
        EventSetting inside = EventSetting.smallest();
        assertEquals(1950, task(day(inside, 0, FIRST), FIRST, Part.FLY).latestEnd());
        EventSetting landing = new EventSetting(1, 1, 1, 1, false, 60, true, List.of(), new TreeMap<>());
        assertEquals(1800, task(day(landing, 0, FIRST), FIRST, Part.FLY).latestEnd());
    }

    @Test
    void history_is_planned_carefully_or_at_its_median() {
        Map<Part, Estimate> known = Map.of(Part.WIND, Estimate.of(Part.WIND, List.of(100L, 200L, 300L)));
        EventSetting quick = new EventSetting(1, 1, 1, 1, true, 60, false, List.of(), new TreeMap<>());
        String wind = "Heron 1 wind";
        assertEquals(
                280,
                EventChains.of(List.of(FIRST), known, EventSetting.smallest(), 0, null)
                        .byId()
                        .get(wind)
                        .duration());
        assertEquals(
                200,
                EventChains.of(List.of(FIRST), known, quick, 0, null)
                        .byId()
                        .get(wind)
                        .duration());
    }

    @Test
    void attempts_of_an_entry_follow_each_other_with_one_person_and_a_rested_motor() {
        EventSetting setting = new EventSetting(
                1,
                1,
                1,
                1,
                true,
                60,
                true,
                List.of(
                        Person.cleared("kim", Set.of(EventSetting.WINDS, EventSetting.LOADS)),
                        Person.cleared("sam", Set.of(EventSetting.WINDS, EventSetting.LOADS))),
                new TreeMap<>(Map.of("m1", 3600L)));
        PlanProblem problem = day(setting, 0, FIRST, SECOND);
        DayPlan plan = plan(problem);
        assertTrue(plan.start("Heron 2 prepare") >= plan.start("Heron 1 run back") + 120);
        assertEquals(plan.peopleOf("Heron 1 wind"), plan.peopleOf("Heron 2 wind"));
        assertFalse(plan.motors().get("Heron 1 wind").equals(plan.motors().get("Heron 2 wind")));
        assertEquals(0, Figures.of(problem, Goal.SLACK, plan).handOvers());
    }

    @Test
    void the_best_motor_goes_to_the_attempt_that_counts() {
        AttemptAhead practice =
                new AttemptAhead("Heron", 1, 600L, 1800L, false, new TreeMap<>(Map.of("m1", 0, "m2", 1)), List.of());
        EventSetting resting = new EventSetting(
                1, 1, 1, 1, true, 60, true, List.of(), new TreeMap<>(Map.of("m1", 9000L, "m2", 9000L)));
        DayPlan plan = plan(day(resting, 0, practice, SECOND));
        assertEquals("m1", plan.motors().get("Heron 2 wind"));
        assertEquals("m2", plan.motors().get("Heron 1 wind"));
    }

    @Test
    void what_has_begun_stays_what_runs_over_is_longer_and_nothing_starts_in_the_past() {
        AttemptAhead underWay = new AttemptAhead(
                "Heron",
                1,
                600L,
                1800L,
                true,
                new TreeMap<>(Map.of("m1", 0)),
                List.of(new AttemptAhead.Begun(Part.PREPARE, 200, 550L), new AttemptAhead.Begun(Part.WIND, 610, null)));
        PlanProblem problem = day(EventSetting.smallest(), 900, underWay);
        assertEquals(350, task(problem, underWay, Part.PREPARE).duration());
        assertEquals(290, task(problem, underWay, Part.WIND).duration(), "240 planned, 290 gone");
        DayPlan plan = plan(problem);
        assertEquals(610, plan.start("Heron 1 wind"));
        assertEquals(900, plan.start("Heron 1 load"));
        assertEquals(945, plan.start("Heron 1 fly"));
    }

    @Test
    void a_hold_that_is_too_long_already_leaves_a_plan() {
        AttemptAhead waiting = new AttemptAhead(
                "Heron",
                1,
                600L,
                1800L,
                true,
                new TreeMap<>(),
                List.of(
                        new AttemptAhead.Begun(Part.PREPARE, 300, 600L),
                        new AttemptAhead.Begun(Part.WIND, 600, 800L),
                        new AttemptAhead.Begun(Part.LOAD, 800, 840L)));
        assertEquals(1400, plan(day(EventSetting.smallest(), 1400, waiting)).start("Heron 1 fly"));
    }

    @Test
    void bench_work_of_a_motor_that_is_handed_in_is_done_inside_the_window_before_winding() {
        AttemptAhead handedIn =
                AttemptAhead.of("Heron", 1, 600L, 1800L, Map.of()).withBench(180);
        DayPlan plan = plan(day(EventSetting.smallest(), 0, handedIn));
        assertTrue(plan.start("Heron 1 prepare") >= 600, plan.toString());
        long ready = plan.start("Heron 1 prepare") + Part.PREPARE.defaultSeconds() + 180;
        assertTrue(plan.start("Heron 1 wind") >= ready, plan.toString());
        AttemptAhead free = AttemptAhead.of("Heron", 1, 600L, 1800L, Map.of());
        assertTrue(plan(day(EventSetting.smallest(), 0, free)).start("Heron 1 prepare") < 600);
    }

    @Test
    void what_is_under_way_and_comes_too_late_is_flown_at_once_and_leaves_the_others_their_plan() {
        AttemptAhead late = new AttemptAhead(
                "Heron",
                1,
                600L,
                1800L,
                true,
                new TreeMap<>(),
                List.of(
                        new AttemptAhead.Begun(Part.PREPARE, 300, 600L),
                        new AttemptAhead.Begun(Part.WIND, 600, 800L),
                        new AttemptAhead.Begun(Part.LOAD, 800, 840L)));
        AttemptAhead other = AttemptAhead.of("Plover", 1, 1800L, 4000L, Map.of());
        DayPlan plan = plan(day(EventSetting.smallest(), 1801, late, other));
        assertEquals(1801, plan.start("Heron 1 fly"));
        Outcome never = Planner.plan(
                day(EventSetting.smallest(), 1801, AttemptAhead.of("Heron", 1, 600L, 1800L, Map.of())),
                Goal.SLACK,
                Effort.live());
        assertEquals(Outcome.Status.INFEASIBLE, never.status(), "what has not begun cannot begin any more");
        assertNull(never.plan());
    }

    private static final Person KIM = Person.cleared("kim", Set.of(EventSetting.WINDS, EventSetting.LOADS));
    private static final Person SAM = Person.cleared("sam", Set.of(EventSetting.WINDS, EventSetting.LOADS));

    private static AttemptAhead wound(AttemptAhead attempt, Long end, String who) {
        return new AttemptAhead(
                attempt.entry(),
                attempt.number(),
                attempt.opens(),
                attempt.closes(),
                true,
                attempt.motors(),
                List.of(
                        new AttemptAhead.Begun(Part.PREPARE, 300, 600L),
                        new AttemptAhead.Begun(Part.WIND, 600, end).by(who)));
    }

    @Test
    void who_does_what_runs_goes_on_with_it_and_does_nothing_else_meanwhile() {
        EventSetting two = EventSetting.smallest().with(2, 1, 1, 1).withCrew(List.of(KIM, SAM));
        AttemptAhead other = AttemptAhead.of("Crane", 1, 600L, 3000L, Map.of());
        for (String who : List.of("kim", "sam")) {
            DayPlan plan = plan(day(two, 700, wound(FIRST, null, who), other));
            assertEquals(List.of(who), plan.peopleOf("Heron 1 wind"));
        }
        EventSetting untrained = two.withCrew(List.of(KIM, Person.cleared("ash", Set.of(EventSetting.LOADS))));
        DayPlan plan = plan(day(untrained, 700, wound(FIRST, null, "ash"), other));
        assertEquals(List.of("ash"), plan.peopleOf("Heron 1 wind"), "not cleared, but it is a fact");
        assertEquals(List.of("kim"), plan.peopleOf("Crane 1 wind"));
        PlanProblem visitor = day(two, 700, wound(FIRST, null, "somebody else"), other);
        assertEquals(
                List.of(PersonNeed.anyone(EventSetting.WINDS)),
                task(visitor, FIRST, Part.WIND).people());
        assertThrows(IllegalArgumentException.class, () -> new AttemptAhead.Begun(Part.WIND, 0, null, " "));
    }

    @Test
    void who_wound_before_winds_again_so_that_nothing_is_handed_over() {
        EventSetting two = EventSetting.smallest().withCrew(List.of(KIM, SAM));
        for (String who : List.of("kim", "sam")) {
            PlanProblem problem = day(two, 850, wound(FIRST, 840L, who), SECOND);
            assertEquals(
                    List.of(PersonNeed.of(who)), task(problem, FIRST, Part.WIND).people());
            DayPlan plan = plan(problem);
            assertEquals(List.of(who), plan.peopleOf("Heron 2 wind"));
            assertEquals(0, Figures.of(problem, Goal.SLACK, plan).handOvers());
        }
    }

    @Test
    void preparing_ends_close_before_winding_and_costs_no_time_in_hand() {
        AttemptAhead late = AttemptAhead.of("Heron", 1, 7200L, 9000L, Map.of());
        PlanProblem problem = day(EventSetting.smallest(), 0, late);
        DayPlan plan = plan(problem);
        assertEquals(7200, plan.start("Heron 1 wind"));
        assertEquals(6600, plan.start("Heron 1 prepare"), "300 of preparing, ready 300 before");
        PlanProblem without =
                problem.withLags(problem.lags().stream().filter(Lag::isHard).toList());
        assertEquals(
                Figures.of(problem, Goal.SLACK, plan(without)).headline(),
                Figures.of(problem, Goal.SLACK, plan).headline());
    }

    @Test
    void holds_weigh_more_than_standing_prepared() {
        PlanProblem problem = day(EventSetting.smallest(), 0, FIRST, SECOND);
        assertEquals(0, Figures.of(problem, Goal.SLACK, plan(problem)).preferences());
        Map<String, Long> weights = new TreeMap<>();
        problem.lags().stream().filter(lag -> !lag.isHard()).forEach(lag -> weights.put(lag.id(), lag.weight()));
        assertTrue(weights.get("Heron 1 wind~>Heron 1 fly") > weights.get("Heron 1 prepare~>Heron 1 wind"));
    }

    @Test
    void parts_begin_in_order() {
        List<AttemptAhead.Begun> skipped = List.of(new AttemptAhead.Begun(Part.WIND, 0, null));
        assertThrows(
                IllegalArgumentException.class,
                () -> new AttemptAhead("Heron", 1, null, null, true, new TreeMap<>(), skipped));
        assertThrows(IllegalArgumentException.class, () -> AttemptAhead.of("Heron", 1, 5L, 4L, Map.of()));
        assertThrows(IllegalArgumentException.class, () -> new AttemptAhead.Begun(Part.WIND, 5, 4L));
    }
}
