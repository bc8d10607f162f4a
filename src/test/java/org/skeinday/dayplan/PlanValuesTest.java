package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.function.Executable;

class PlanValuesTest {
    private static final Task WIND = Task.of("wind", 4);

    private static DynamicTest refuses(String message, Executable making) {
        return DynamicTest.dynamicTest(
                message,
                () -> assertEquals(
                        message,
                        assertThrows(IllegalArgumentException.class, making).getMessage()));
    }

    private static PlanProblem problem(List<Task> tasks, List<Lag> lags) {
        return PlanProblem.of(tasks, List.of(new Resource("lane", 1)), lags);
    }

    @TestFactory
    Stream<DynamicTest> values_say_what_must_hold_and_what_was() {
        return Stream.of(
                refuses("A task must have a name, but it was blank", () -> Task.of(" ", 1)),
                refuses("The duration of a must be 0 to 1000000000, but was -1", () -> Task.of("a", -1)),
                refuses("What wind needs of lane must be 1 to 1000000, but was 0", () -> WIND.needing("lane", 0)),
                refuses(
                        "How little m1 is wanted must be 0 to 1000000, but was -1",
                        () -> WIND.takingOneOf(Map.of("m1", -1))),
                refuses("The capacity of lane must be 0 to 1000000, but was -1", () -> new Resource("lane", -1)),
                refuses(
                        "A lag must join two different tasks, but both were wind",
                        () -> Lag.between("wind", "wind", 1L, null)),
                refuses(
                        "A preferred lag must have a least of no more than its most, but a~>b has 2 and 1",
                        () -> Lag.preferred("a", "b", 2L, 1L, 1)),
                refuses(
                        "Each task must have a name of its own, but two are called wind",
                        () -> problem(List.of(WIND, WIND), List.of())),
                refuses(
                        "wind needs a resource that must be there, but pole is not",
                        () -> problem(List.of(WIND.needing("pole", 1)), List.of())),
                refuses(
                        "wind needs a person that must be there, but nobody known is not",
                        () -> problem(List.of(WIND.needingPerson(new PersonNeed("winds", "nobody known"))), List.of())),
                refuses(
                        "The lag wind->fly leads to a task that must be there, but fly is not",
                        () -> problem(List.of(WIND), List.of(Lag.between("wind", "fly", 4L, null)))),
                refuses(
                        "The rest of m1 must be 0 to 1000000000, but was -1",
                        () -> problem(List.of(WIND), List.of()).withMotorRest(Map.of("m1", -1L))),
                refuses("Work for the proof must be above 0, but was 0", () -> new Effort(0, 1)),
                refuses(
                        "Work for the goal must be above 0, but was Infinity",
                        () -> new Effort(1, Double.POSITIVE_INFINITY)),
                refuses(
                        "The plan must know the task fly, but knows [wind]",
                        () -> DayPlan.ofStarts(Map.of("wind", 1L)).start("fly")));
    }

    @Test
    void a_plan_that_breaks_something_is_told_what() {
        Task fly = Task.of("fly", 2).within(1L, 5L).needing("lane", 1);
        Task back = Task.of("back", 3).needing("lane", 1).fixedAt(6L);
        PlanProblem problem = problem(List.of(fly, back), List.of(Lag.between("fly", "back", 3L, 4L)));
        assertEquals(List.of(), PlanCheck.faults(problem, DayPlan.ofStarts(Map.of("fly", 2L, "back", 6L))));
        assertEquals(
                List.of("fly starts at 0, before 1", "back starts 6 after fly, which breaks fly->back"),
                PlanCheck.faults(problem, DayPlan.ofStarts(Map.of("fly", 0L, "back", 6L))));
        assertEquals(
                List.of(
                        "fly ends at 6, after 5",
                        "back is fixed at 6, but starts at 5",
                        "back starts 1 after fly, which breaks fly->back",
                        "lane is needed 2 times at 5, but there are 1"),
                PlanCheck.faults(problem, DayPlan.ofStarts(Map.of("fly", 4L, "back", 5L))));
        assertEquals(List.of("back has no start"), PlanCheck.faults(problem, DayPlan.ofStarts(Map.of("fly", 4L))));
    }

    @Test
    void people_and_motors_that_do_not_fit_are_told() {
        Task wind = WIND.needingPerson(PersonNeed.anyone("winds")).takingOneOf(Map.of("m1", 0));
        Task later =
                Task.of("later", 4).needingPerson(PersonNeed.anyone("winds")).takingOneOf(Map.of("m1", 0));
        PlanProblem problem = problem(List.of(wind, later), List.of())
                .withPeople(
                        List.of(Person.cleared("kim", Set.of("winds")), Person.cleared("sam", Set.of("loads"))),
                        List.of())
                .withMotorRest(Map.of("m1", 3L));
        assertEquals(
                List.of("sam may not do winds in later", "later takes one of [m1], but has null"),
                PlanCheck.faults(problem, plan(9, "sam", null)));
        assertEquals(
                List.of("The person kim is in wind and later at once", "The motor m1 is in wind and later at once"),
                PlanCheck.faults(problem, plan(3, "kim", "m1")));
        assertEquals(
                List.of("The motor m1 is in wind and later at once"), PlanCheck.faults(problem, plan(6, "kim", "m1")));
        assertEquals(List.of(), PlanCheck.faults(problem, plan(7, "kim", "m1")));
    }

    private static DayPlan plan(long later, String person, String motor) {
        var motors = new TreeMap<>(Map.of("wind", "m1"));
        if (motor != null) {
            motors.put("later", motor);
        }
        return new DayPlan(
                new TreeMap<>(Map.of("wind", 0L, "later", later)),
                new TreeMap<>(Map.of("wind", List.of("kim"), "later", List.of(person))),
                motors);
    }
}
