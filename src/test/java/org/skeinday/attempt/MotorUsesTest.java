package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.contest.EventAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;

/** One motor, A3, of 2000 breaking turns at ratio 10: 101 crank turns are a use, 100 are none. */
class MotorUsesTest {
    private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

    private final List<AttemptImported> attempts = new ArrayList<>();
    private final List<PracticeFlown> flights = new ArrayList<>();
    private final List<WindBegun> winds = new ArrayList<>();
    private final Map<String, WindCounted> counted = new HashMap<>();
    private final List<TurnsRunBack> runBacks = new ArrayList<>();
    private final Map<String, Double> placeRatios = new HashMap<>();
    private final Set<String> offered = new TreeSet<>();
    private final List<LaterUses> later = new ArrayList<>();
    private int usesBefore;
    private @Nullable Integer breakingTurns = 2_000;

    private MotorUses uses() {
        var event = new EventAdded(
                "e",
                "Day",
                "hosting",
                "2026-05-09",
                null,
                null,
                null,
                6,
                12,
                "best",
                1,
                2,
                "mean",
                "mean",
                100,
                "down",
                false,
                0,
                10,
                null,
                null);
        var motor =
                new MotorAdded("A3", "A3", "b", "Reed", "cw", 470, "470 mm", 1.6, "1.6 g", breakingTurns, usesBefore);
        return MotorUses.of(
                new WindingEvidence(
                        List.of(event), attempts, flights, winds, counted, runBacks, offered, placeRatios, later),
                List.of(motor),
                List.of(new BatchAdded("b", "B", null, null, null, null, null, null)));
    }

    private static long at(String when) {
        return Instant.parse(when + ":00Z").toEpochMilli();
    }

    private void attempt(int number, String state, @Nullable String winding, @Nullable String closed, Integer stop) {
        Long wound = winding == null ? null : (Long) at(winding);
        attempts.add(new AttemptImported(
                "t" + number,
                "e",
                "entry",
                number,
                null,
                "A3",
                state,
                null,
                wound,
                null,
                null,
                null,
                closed == null ? null : (Long) at(closed),
                stop,
                null,
                null,
                null,
                null,
                null));
    }

    private void flight(String id, String at, @Nullable Integer turns) {
        flights.add(flown(id, at, turns));
    }

    private static PracticeFlown flown(String id, String at, @Nullable Integer turns) {
        return new PracticeFlown(
                id, "e", null, "A3", at(at), turns, 10, null, null, null, null, null, 90_000, null, null, true, null);
    }

    private void wind(String id, @Nullable String attempt, String at, @Nullable Integer turns) {
        winds.add(new WindBegun(
                id, attempt, "A3", null, null, 10, null, null, null, null, 0, null, "count", 1, "d", null, at(at),
                false));
        if (turns != null) {
            counted.put(id, new WindCounted(id, null, turns, null, false));
        }
    }

    @Test
    void uses_that_no_row_tells_stand_where_a_file_told_that_they_were_and_a_correction_moves_what_comes_after() {
        usesBefore = 3; // two of another day between the two, one after them
        flight("f", "2026-05-02T18:00", 210);
        flight("g", "2026-05-04T18:00", 210);
        later.add(new LaterUses("f", "A3", 3));
        later.add(new LaterUses("g", "A3", 1));
        assertEquals(List.of(1, 4), numbers("f", "g"));
        assertEquals(5, uses().of("A3"));
        flight("h", "2026-05-09T18:00", 210);
        assertEquals(6, uses().number("A3", "h"), "a new one comes after all of them");
        flights.remove(0);
        flights.add(0, flown("f", "2026-05-02T18:00", 40));
        assertEquals(List.of(1, 3), numbers("f", "g"), "turns that are no use, so that the next is one less");
        later.set(0, new LaterUses("f", "B1", 3));
        assertEquals(4, uses().number("A3", "f"), "of another motor it says nothing");
    }

    @Test
    void a_file_that_tells_of_more_uses_before_a_flight_than_of_its_motor_is_believed_for_all_that_come_after() {
        flight("f", "2026-05-02T18:00", 210);
        flight("g", "2026-05-04T18:00", 210);
        later.add(new LaterUses("f", "A3", -5));
        assertEquals(List.of(6, 7), numbers("f", "g"));
        assertEquals(7, uses().of("A3"));
    }

    @Test
    void official_practice_paper_and_imported_flights_and_winds_are_one_count() {
        usesBefore = 2;
        attempt(1, "closed", "2026-05-09T10:00", "2026-05-09T10:10", 200);
        attempt(2, "closed", null, "2026-05-09T18:00", 201); // keyed in from a card
        flight("f", "2026-05-02T18:00", 210);
        wind("w", null, "2026-05-03T18:00", 150);
        assertEquals(6, uses().of("A3"));
        assertEquals(List.of(3, 4, 5, 6), numbers("f", "w", "t1", "t2"), "by day, card and time");
    }

    private List<Integer> numbers(String... windings) {
        MotorUses uses = uses();
        return List.of(windings).stream().map(w -> uses.number("A3", w)).toList();
    }

    @Test
    void more_than_half_of_the_breaking_turns_are_a_use_and_turns_that_nobody_counted_may_be_all() {
        flight("half", "2026-05-02T18:00", 100);
        flight("more", "2026-05-02T18:10", 101);
        flight("unknown", "2026-05-02T18:20", null);
        assertEquals(2, uses().of("A3"));
        assertEquals(List.of(1, 1, 2), numbers("half", "more", "unknown"));
        breakingTurns = null;
        assertEquals(3, uses().of("A3"), "nothing is known of half of them");
    }

    @Test
    void turns_that_somebody_counted_go_before_those_that_a_form_only_proposed() {
        flight("f", "2026-05-02T18:00", 200);
        wind("w", null, "2026-05-02T17:50", 90);
        assertEquals(1, uses().of("A3"), "as the flight has it");
        offered.add("f");
        assertEquals(0, uses().of("A3"), "the wind was counted");
        offered.add("w");
        assertEquals(1, uses().of("A3"), "neither was");
        attempt(1, "closed", "2026-05-09T10:00", "2026-05-09T10:10", 60);
        wind("x", "t1", "2026-05-09T10:00", 150);
        assertEquals(2, uses().of("A3"));
        offered.add("x");
        assertEquals(1, uses().of("A3"), "somebody typed 60 of the attempt");
    }

    @Test
    void crank_turns_that_nobody_read_are_of_the_winder_at_the_place() {
        attempt(1, "closed", "2026-05-09T10:00", "2026-05-09T10:10", 60);
        assertEquals(0, uses().of("A3"), "600 motor turns by the event's winder");
        placeRatios.put("t1", 20.0);
        assertEquals(1, uses().of("A3"), "1200 by the place's");
    }

    @Test
    void a_card_without_times_stands_between_those_before_and_after_it() {
        attempt(1, "closed", "2026-05-09T10:00", null, 200);
        attempt(2, "closed", null, "2026-05-09T18:00", 200);
        attempt(3, "closed", "2026-05-09T11:00", null, 200);
        flight("f", "2026-05-09T10:30", 200);
        assertEquals(List.of(1, 2, 3, 4), numbers("t1", "t2", "f", "t3"));
    }

    @Test
    void the_first_card_stands_before_the_second_and_cards_alone_go_by_number_where_they_were_keyed_in() {
        attempt(1, "closed", null, "2026-05-09T18:00", 200);
        attempt(2, "closed", "2026-05-09T11:00", null, 200);
        flight("f", "2026-05-09T10:00", 200);
        assertEquals(List.of(1, 2, 3), numbers("f", "t1", "t2"));
        attempts.clear();
        attempt(1, "closed", null, "2026-05-09T18:05", 200);
        attempt(2, "closed", null, "2026-05-09T18:00", 200);
        assertEquals(List.of(1, 2, 3), numbers("f", "t1", "t2"));
    }

    @Test
    void a_wind_and_what_came_of_it_are_one() {
        attempt(1, "landed", "2026-05-09T10:00", null, 200);
        wind("w1", "t1", "2026-05-09T10:00", 200);
        wind("w2", null, "2026-05-10T10:00", 200);
        flight("f", "2026-05-10T10:05", 200);
        assertEquals(2, uses().of("A3"));
        assertEquals(List.of(1, 1, 2, 2), numbers("t1", "w1", "w2", "f"));
    }

    @Test
    void a_wind_under_way_is_a_use_and_its_own_plan_is_that_of_before() {
        attempt(1, "winding", "2026-05-09T10:00", null, null);
        assertEquals(1, uses().of("A3"));
        assertEquals(0, uses().before("A3", "t1"));
        assertEquals(1, uses().before("A3", "t2"), "not wound yet: as now");
    }

    @Test
    void what_was_run_back_is_a_use_of_its_own_as_it_was_judged() {
        attempt(1, "called", null, null, null);
        wind("w1", "t1", "2026-05-09T10:00", 150);
        runBacks.add(back("b1", "w1", true, "called"));
        assertEquals(1, uses().of("A3"));
        runBacks.set(0, back("b1", "w1", false, "called"));
        assertEquals(0, uses().of("A3"));
        wind("w2", "t1", "2026-05-09T10:20", 200);
        assertEquals(1, uses().of("A3"), "wound anew");
    }

    private static TurnsRunBack back(String id, String wind, boolean use, String state) {
        return new TurnsRunBack(id, "t1", "A3", wind, 150, use, state, at("2026-05-09T10:10"), null, "laptop");
    }

    @Test
    void an_attempt_that_was_abandoned_before_anybody_wound_is_none() {
        attempt(1, "scrubbed", null, "2026-05-09T10:00", null);
        attempt(2, "planned", null, null, null);
        assertEquals(0, uses().of("A3"));
    }

    @Test
    void until_the_end_of_a_day_counts_cards_by_their_event_and_the_rest_by_the_hall_s_clock() {
        attempt(1, "closed", null, "2026-05-12T18:00", 200);
        flight("late", "2026-05-09T21:59", 200);
        flight("next", "2026-05-09T22:01", 200);
        MotorUses uses = uses();
        assertEquals(0, uses.until("A3", LocalDate.of(2026, 5, 8), ZONE));
        assertEquals(2, uses.until("A3", LocalDate.of(2026, 5, 9), ZONE));
        assertEquals(3, uses.until("A3", LocalDate.of(2026, 5, 10), ZONE));
    }

    @Test
    void a_count_has_words() {
        assertEquals("not used yet", MotorUses.words(0));
        assertEquals("used 1 time", MotorUses.words(1));
        assertEquals("used 2 times", MotorUses.words(2));
    }
}
