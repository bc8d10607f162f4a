package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ParallelTasksTest {
    private static final ParallelTasks.Retrieval DOWN = new ParallelTasks.Retrieval("Heron", 2, 2000, 400);
    private static final ParallelTasks.Repair MENDED = new ParallelTasks.Repair("Heron", 2, 0, 600, 1800);
    private static final List<AttemptAhead> ATTEMPTS = List.of(
            AttemptAhead.of("Heron", 1, 600L, 1800L, Map.of()), AttemptAhead.of("Heron", 2, 600L, 9000L, Map.of()));

    private static PlanProblem day(ParallelTasks besides, Person... crew) {
        EventSetting setting = EventSetting.smallest().withCrew(List.of(crew));
        return EventChains.of(ATTEMPTS, Map.of(), setting, besides, 0, null);
    }

    private static Outcome plan(PlanProblem problem) {
        return Planner.plan(problem, Goal.SLACK, Effort.live());
    }

    private static Person person(String id, String... clearances) {
        return Person.cleared(id, Set.of(clearances));
    }

    private static ParallelTasks away(long from, long until) {
        return new ParallelTasks(List.of(new ParallelTasks.Absence("kim", from, until)), List.of(), List.of(), 0);
    }

    @Test
    void a_repair_and_its_cure_hold_up_the_attempt_that_needs_the_model_and_no_earlier_one() {
        PlanProblem problem = day(new ParallelTasks(List.of(), List.of(MENDED), List.of(DOWN), 1));
        DayPlan plan = plan(problem).plan();
        assertEquals(List.of(), PlanCheck.faults(problem, plan));
        assertEquals(600, plan.start("Heron 1 wind"), "flown with the spare");
        assertEquals(2000, plan.start("Heron retrieval before 2"));
        assertEquals(2400, plan.start("Heron repair before 2"), "once it is down");
        assertEquals(4800, plan.start("Heron 2 prepare"), "600 of work and 1800 of cure");
    }

    @Test
    void a_model_comes_down_only_with_a_pole_and_somebody_cleared() {
        ParallelTasks down = new ParallelTasks(List.of(), List.of(), List.of(DOWN), 0);
        assertEquals(
                List.of("Heron retrieval before 2", "pole"),
                plan(day(down)).conflict().stream().map(Requirement::id).toList());
        ParallelTasks pole = new ParallelTasks(List.of(), List.of(), List.of(DOWN), 1);
        Person winder = person("kim", EventSetting.WINDS, EventSetting.LOADS);
        assertEquals(
                List.of("Heron retrieval before 2", ParallelTasks.RETRIEVES),
                plan(day(pole, winder)).conflict().stream().map(Requirement::id).toList());
        DayPlan plan =
                plan(day(pole, winder, person("sam", ParallelTasks.RETRIEVES))).plan();
        assertEquals(List.of("sam"), plan.peopleOf("Heron retrieval before 2"));
    }

    @Test
    void who_is_away_does_nothing_meanwhile() {
        Person kim = person("kim", EventSetting.WINDS, EventSetting.LOADS);
        PlanProblem problem = day(away(500, 1000), kim);
        DayPlan plan = plan(problem).plan();
        assertEquals(List.of(), PlanCheck.faults(problem, plan));
        assertEquals(1000, plan.start("Heron 1 wind"), "600, were it not for that");
        Outcome none = plan(day(away(500, 1700), kim));
        assertEquals(Outcome.Status.INFEASIBLE, none.status());
        assertTrue(
                none.conflict().contains(new Requirement(Requirement.Kind.TASK, "kim away")),
                () -> none.conflict().toString());
        DayPlan other = plan(day(away(500, 1700), kim, person("sam", EventSetting.WINDS, EventSetting.LOADS)))
                .plan();
        assertEquals(List.of("sam"), other.peopleOf("Heron 1 wind"));
    }

    @Test
    void what_runs_stays_where_it_began_and_lasts_at_least_until_now() {
        PlanProblem mended = EventChains.of(
                ATTEMPTS,
                Map.of(),
                EventSetting.smallest(),
                new ParallelTasks(List.of(), List.of(MENDED.begun(100)), List.of(), 0),
                1000,
                null);
        Task repair = mended.byId().get("Heron repair before 2");
        assertEquals(100, repair.fixedStart());
        assertEquals(900, repair.duration(), "600 planned, 900 gone");
        assertTrue(plan(mended).plan().start("Heron 2 prepare") >= 100 + 900 + 1800);
        PlanProblem down = EventChains.of(
                ATTEMPTS,
                Map.of(),
                EventSetting.smallest(),
                new ParallelTasks(List.of(), List.of(), List.of(DOWN.begun(800)), 1),
                1000,
                null);
        assertEquals(800, down.byId().get("Heron retrieval before 2").fixedStart());
        assertEquals(400, down.byId().get("Heron retrieval before 2").duration());
        assertEquals(List.of(), PlanCheck.faults(down, plan(down).plan()));
        assertThrows(IllegalArgumentException.class, () -> MENDED.begun(2_000_000_000L));
    }

    @Test
    void what_cannot_be_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new ParallelTasks.Absence("kim", 5, 4));
        assertThrows(IllegalArgumentException.class, () -> new ParallelTasks.Repair("Heron", 0, 0, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new ParallelTasks.Retrieval("Heron", 1, 0, -1));
        assertThrows(IllegalArgumentException.class, () -> new PersonNeed(null, null));
    }
}
