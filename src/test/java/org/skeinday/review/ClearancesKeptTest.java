package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.CrewRemoved;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.EventAdded;

/** Ines loads and leaves; Jorun loads and winds and stays. */
class ClearancesKeptTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 9, 1);
    private static final List<CrewAdded> CREW = List.of(
            new CrewAdded("ines", "", "loads", null, null),
            new CrewAdded("ines", "later", "loads", null, null),
            new CrewAdded("jorun", "", "winds,loads", 4, null));

    private static EventAdded event(String id, String day) {
        return new EventAdded(
                id, id, "hosting", day, null, null, null, 3, 12, "best", 1, 1, "mean", "mean", 100, "down", false, 0,
                10, null, null);
    }

    private static ClearancesKept kept(EntryTask... tasks) {
        return new ClearancesKept(
                FIRST,
                List.of(event("past", "2026-05-09"), event("later", "2026-09-01")),
                List.of(
                        new EntryAdded("p", "past", "Curlew", "Reed", null, true, null),
                        new EntryAdded("l", "later", "Avocet", "Reed", null, true, null)),
                List.of(tasks),
                CREW);
    }

    private static NewSeason season(boolean inesLeaves) {
        return NewSeason.of(
                FIRST,
                List.of(
                        new NewSeason.Person("ines", "Ines", inesLeaves),
                        new NewSeason.Person("jorun", "Jorun", false)),
                CREW,
                List.of(),
                12);
    }

    @Test
    void a_past_event_keeps_the_clearances_that_its_tasks_rest_on() {
        var kept = kept(new EntryTask("p", "loads", "ines"), new EntryTask("p", "winds", "jorun"));
        assertEquals(
                List.of(
                        new CrewAdded("ines", "past", "loads", null, null),
                        new CrewAdded("jorun", "past", "winds,loads", 4, null)),
                kept.ofPastEvents(season(true)));
        assertEquals(List.of(), kept().ofPastEvents(season(true)), "without a task nothing rests on them");
    }

    @Test
    void who_leaves_loses_the_line_for_all_events_and_those_for_events_to_come() {
        assertEquals(
                List.of(new CrewRemoved("ines", ""), new CrewRemoved("ines", "later")), kept().ended(season(true)));
        assertEquals(List.of(), kept().ended(season(false)));
    }

    @Test
    void a_task_in_an_event_to_come_is_given_to_somebody_else_first() {
        Map<String, String> names = Map.of("ines", "Ines", "jorun", "Jorun");
        var loads = kept(new EntryTask("l", "loads", "jorun"));
        assertEquals(
                List.of("Jorun loads for Avocet in an event to come: name somebody else there first."),
                loads.stillNeeded(season(false), names));
        assertTrue(kept(new EntryTask("l", "winds", "jorun"))
                .stillNeeded(season(false), names)
                .isEmpty());
        assertTrue(
                kept(new EntryTask("l", "loads", "ines"))
                        .stillNeeded(season(false), names)
                        .isEmpty(),
                "her line for that event stays");
        assertEquals(
                1,
                kept(new EntryTask("l", "loads", "ines"))
                        .stillNeeded(season(true), names)
                        .size());
        assertTrue(kept(new EntryTask("p", "loads", "jorun"))
                .stillNeeded(season(true), names)
                .isEmpty());
    }
}
