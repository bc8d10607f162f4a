package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.contest.DayKind;
import org.skeinday.motor.BreakPlace;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindPhase;

/** What is true of an attempt in each phase, from what the record knows of it. Moments are seconds after the call. */
class LiveAttemptTest {
    private State state = State.CALLED;
    private String motor = "A3";
    private @Nullable Long winding;
    private @Nullable Long holding;
    private @Nullable Long broke;
    private boolean turnsOn;
    private Aloft aloft = Aloft.free("a");
    private DayKind day = DayKind.HOSTING;
    private @Nullable Long windowOpen;
    private int missing;
    private final List<Wind> winds = new ArrayList<>();
    private final List<AttemptEvidence.BreakTold> breaks = new ArrayList<>();
    private final List<TurnsRunBack> runBacks = new ArrayList<>();
    private final List<WatchMarked> marks = new ArrayList<>();

    private LiveAttempt live() {
        var now = new AttemptNow(
                "a",
                "e",
                "t",
                AttemptNumber.plain(1),
                "model",
                motor,
                state,
                0L,
                400L,
                61_230L,
                "",
                "reason",
                460L,
                500L,
                false,
                null,
                aloft,
                null);
        return LiveAttempt.of(new AttemptEvidence(
                now,
                day,
                new StepTimes("a", 0L, winding, holding, 400L, 460L),
                winds,
                broke,
                breaks,
                runBacks,
                turnsOn,
                new Timed(
                        List.of(new ReadingTaken("r", "a", 1, "device", null, 60_000, 470L, null, null, null)),
                        List.of(),
                        new Marks(marks)),
                2,
                missing,
                windowOpen));
    }

    private AttemptPhase.Name phase() {
        return live().phase().name();
    }

    private LiveAttemptTest in(State reached, long windingAt, @Nullable Long holdingAt) {
        state = reached;
        winding = windingAt;
        holding = holdingAt;
        return this;
    }

    /** A wind of a motor, with taps as {@code stopped@230}. */
    private void wind(String id, String of, long at, String... taps) {
        var begun = new WindBegun(
                id, "a", of, null, null, 10, null, null, 200, 120, 4, null, "count", 1, "reader", null, at, false);
        List<WindPhase> phases = new ArrayList<>();
        for (String tap : taps) {
            String[] parts = tap.split("@");
            long when = Long.parseLong(parts[1]);
            phases.add(new WindPhase(id + "-" + phases.size(), id, parts[0], when - at, when));
        }
        winds.add(Wind.of(begun, phases, List.of(), null));
    }

    @Test
    void a_planned_attempt_is_next_and_stands_nowhere_yet() {
        state = State.PLANNED;
        assertEquals(AttemptPhase.Name.NEXT, phase());
        assertTrue(live().phase().since().isEmpty());
    }

    @Test
    void a_called_attempt_has_its_first_wind_before_it() {
        assertEquals(new AttemptPhase.Called(0, 1), live().phase());
    }

    @Test
    void the_first_crank_turn_begins_the_wind() {
        wind("w1", "A3", 100);
        assertEquals(
                new AttemptPhase.Winding(100, 1),
                in(State.WINDING, 100, null).live().phase());
    }

    @Test
    void the_hold_runs_from_the_last_turn_and_is_not_restarted_by_turns_that_are_taken_off() {
        wind("w1", "A3", 100, "stopped@230", "backed-off@250", "off-meter@270");
        assertEquals(
                new AttemptPhase.Holding(230, 1),
                in(State.HOLDING, 100, 230L).live().phase());
    }

    @Test
    void where_the_stop_was_not_tapped_the_hold_runs_from_the_back_off_that_was() {
        wind("w1", "A3", 100, "backed-off@220");
        assertEquals(
                new AttemptPhase.Holding(220, 1),
                in(State.HOLDING, 100, 240L).live().phase());
    }

    @Test
    void without_a_reader_it_runs_from_when_somebody_said_that_it_was_wound() {
        assertEquals(
                new AttemptPhase.Holding(240, 1),
                in(State.HOLDING, 100, 240L).live().phase());
    }

    @Test
    void two_motors_that_are_held_at_once_are_a_wind_each_and_the_earliest_hold_counts() {
        wind("w1", "B2", 100, "stopped@230");
        wind("w2", "A3", 240, "stopped@300");
        assertEquals(
                new AttemptPhase.Holding(230, 2),
                in(State.HOLDING, 240, 300L).live().phase());
        winds.clear();
        wind("w1", "A3", 100, "stopped@230");
        wind("w2", "B2", 240, "stopped@300");
        assertEquals(
                new AttemptPhase.Holding(230, 2),
                in(State.HOLDING, 100, 230L).live().phase(),
                "whichever it is");
        winds.clear();
        wind("w1", "B2", 100);
        wind("w2", "A3", 240, "stopped@300");
        assertEquals(new AttemptPhase.Holding(300, 2), live().phase(), "one that is still cranked is not held");
    }

    @Test
    void the_hold_of_a_motor_that_broke_or_was_run_back_is_over_with_it() {
        wind("w1", "B2", 100, "stopped@230", "broke@235");
        wind("w2", "A3", 240, "stopped@300");
        assertEquals(
                new AttemptPhase.Holding(300, 2),
                in(State.HOLDING, 240, 300L).live().phase());
        winds.clear();
        wind("w1", "B2", 100, "stopped@230");
        wind("w2", "A3", 240, "stopped@300");
        runBacks.add(new TurnsRunBack("b", "a", "B2", "w1", 100, true, "called", 236, null, "laptop"));
        assertEquals(new AttemptPhase.Holding(300, 2), live().phase(), "run back, then the other");
        runBacks.clear();
        breaks.add(new AttemptEvidence.BreakTold("B2", 236L, BreakPlace.STRAND, 237L));
        assertEquals(new AttemptPhase.Holding(300, 2), live().phase(), "it broke, as the captain said");
    }

    @Test
    void more_turns_go_back_to_winding_and_the_hold_begins_anew_with_the_last_of_them() {
        wind("w1", "A3", 100, "stopped@230", "again@240");
        assertEquals(
                new AttemptPhase.Winding(100, 1),
                in(State.HOLDING, 100, 230L).live().phase());
        winds.clear();
        wind("w1", "A3", 100, "stopped@230", "again@240", "stopped@260");
        assertEquals(new AttemptPhase.Holding(260, 1), live().phase());
    }

    @Test
    void a_mistaken_break_that_is_taken_back_leaves_the_hold_where_it_began() {
        wind("w1", "A3", 100, "stopped@230", "broke@235", "again@240");
        assertEquals(
                new AttemptPhase.Holding(230, 1),
                in(State.HOLDING, 100, 230L).live().phase());
        winds.clear();
        wind("w1", "A3", 100, "stopped@230", "broke@235", "again@240", "again@250");
        assertEquals(new AttemptPhase.Winding(100, 1), live().phase(), "more turns after it are more turns");
        winds.clear();
        wind("w1", "A3", 100, "broke@235", "again@240");
        assertEquals(
                new AttemptPhase.Winding(100, 1),
                in(State.WINDING, 100, null).live().phase(),
                "it was not held before");
    }

    @Test
    void neither_back_off_nor_a_stop_that_is_said_twice_begins_the_hold_anew() {
        wind("w1", "A3", 100, "stopped@230", "backed-off@240", "stopped@250", "off-meter@255", "back-on@258");
        in(State.HOLDING, 100, 260L);
        assertEquals(new AttemptPhase.Holding(230, 1), live().phase());
        winds.clear();
        wind("w1", "A3", 100, "backed-off@240");
        assertEquals(new AttemptPhase.Holding(240, 1), live().phase(), "where nobody said the stop");
    }

    @Test
    void of_two_motors_with_their_back_off_the_one_that_waits_longest_counts() {
        wind("w1", "B2", 100, "backed-off@235", "off-meter@238");
        wind("w2", "A3", 240, "stopped@300", "backed-off@305");
        in(State.HOLDING, 240, 300L);
        assertEquals(new AttemptPhase.Holding(235, 2), live().phase(), "whose stop nobody said");
        winds.set(0, winds.get(0).with(new WindPhase("late", "w1", "stopped", 125, 225)));
        assertEquals(new AttemptPhase.Holding(225, 2), live().phase(), "said late");
    }

    @Test
    void a_break_asks_for_people_whatever_else_was_said() {
        wind("w1", "A3", 100, "broke@150");
        broke = 150L;
        assertEquals(
                new AttemptPhase.Broke(150, "A3", false, null, false),
                in(State.WINDING, 100, null).live().phase());
        breaks.add(new AttemptEvidence.BreakTold("A3", 160L, BreakPlace.KNOT, 170L));
        assertEquals(
                new AttemptPhase.Broke(150, "A3", true, BreakPlace.KNOT, false),
                in(State.HOLDING, 100, 140L).live().phase());
    }

    @Test
    void what_was_told_of_one_motor_says_nothing_of_the_next() {
        breaks.add(new AttemptEvidence.BreakTold("A3", 160L, BreakPlace.STRAND, 170L));
        motor = "B2";
        broke = 300L;
        assertEquals(
                new AttemptPhase.Broke(300, "B2", false, null, false),
                in(State.WINDING, 280, null).live().phase());
    }

    @Test
    void what_was_told_of_a_break_that_was_a_mistake_says_nothing_of_the_real_one() {
        breaks.add(new AttemptEvidence.BreakTold("A3", 160L, BreakPlace.KNOT, 170L));
        broke = 300L;
        in(State.WINDING, 100, null);
        assertEquals(new AttemptPhase.Broke(300, "A3", false, null, false), live().phase());
        breaks.set(0, new AttemptEvidence.BreakTold("A3", 310L, BreakPlace.KNOT, 170L));
        assertEquals(new AttemptPhase.Broke(300, "A3", true, null, false), live().phase());
    }

    @Test
    void a_motor_that_breaks_after_it_was_given_up_asks_for_people_and_then_has_no_turns_on() {
        turnsOn = true;
        broke = 520L;
        in(State.SCRUBBED, 100, 230L);
        assertEquals(new AttemptPhase.Broke(520, "A3", false, null, true), live().phase());
        breaks.add(new AttemptEvidence.BreakTold("A3", 530L, null, null));
        assertEquals(new AttemptPhase.Broke(520, "A3", true, null, true), live().phase());
        breaks.set(0, new AttemptEvidence.BreakTold("A3", 530L, BreakPlace.HOOK, 540L));
        assertEquals(new AttemptPhase.Abandoned(500, "reason"), live().phase());
    }

    @Test
    void one_wind_that_was_said_to_be_broken_and_then_was_run_back_is_counted_once() {
        breaks.add(new AttemptEvidence.BreakTold("A3", 160L, null, null));
        runBacks.add(back(null, State.CALLED));
        motor = "B2";
        assertEquals(2, live().wind());
    }

    @Test
    void in_the_air_it_is_known_that_the_motor_broke() {
        state = State.RELEASED;
        broke = 420L;
        assertEquals(new AttemptPhase.InTheAir(400, null, true), live().phase());
    }

    @Test
    void the_spare_is_the_second_wind() {
        wind("w1", "A3", 100, "broke@150");
        motor = "B2";
        assertEquals(new AttemptPhase.Called(0, 2), live().phase());
        wind("w2", "B2", 280);
        assertEquals(
                new AttemptPhase.Winding(280, 2),
                in(State.WINDING, 280, null).live().phase());
        assertEquals("winding, 2nd", PhaseWords.of(live()));
    }

    @Test
    void a_motor_that_was_run_back_is_wound_once_more_as_the_second_wind() {
        wind("w1", "A3", 100, "stopped@230");
        runBacks.add(back("w1", State.CALLED));
        assertEquals(new AttemptPhase.Called(0, 2), live().phase());
        wind("w2", "A3", 300);
        assertEquals(
                new AttemptPhase.Winding(300, 2),
                in(State.WINDING, 300, null).live().phase());
        assertFalse(live().phase() instanceof AttemptPhase.Holding, "the stop was of the wind before");
    }

    @Test
    void winds_that_nobody_read_are_counted_too() {
        breaks.add(new AttemptEvidence.BreakTold("A3", 295L, null, null));
        motor = "B2";
        runBacks.add(back(null, State.CALLED));
        assertEquals(3, live().wind());
    }

    private static TurnsRunBack back(@Nullable String wind, State then) {
        return new TurnsRunBack("b" + wind, "a", "A3", wind, 120, true, then.word(), 290, null, "laptop");
    }

    @Test
    void given_up_while_wound_it_is_run_back_until_somebody_says_how_many_turns_were_on() {
        turnsOn = true;
        assertEquals(
                new AttemptPhase.RunBack(500, "A3"),
                in(State.SCRUBBED, 100, 230L).live().phase());
        turnsOn = false;
        assertEquals(new AttemptPhase.Abandoned(500, "reason"), live().phase());
    }

    @Test
    void in_the_air_the_building_may_hold_it() {
        state = State.RELEASED;
        assertEquals(new AttemptPhase.InTheAir(400, null, false), live().phase());
        marks.add(mark(WatchMark.RELEASED, null));
        marks.add(mark(WatchMark.HELD, 12_000L));
        assertEquals(new AttemptPhase.InTheAir(400, 12_000L, false), live().phase());
        aloft = aloft.freed(14_000, 12_000);
        assertNull(((AttemptPhase.InTheAir) live().phase()).caughtMs(), "the captain saw it free, the watch did not");
        aloft = Aloft.free("a");
        marks.add(mark(WatchMark.FREE, 15_000L));
        assertNull(((AttemptPhase.InTheAir) live().phase()).caughtMs());
        aloft = aloft.caught(20_000, "person");
        assertEquals(new AttemptPhase.InTheAir(400, 20_000L, false), live().phase(), "no watch marked it");
    }

    private WatchMarked mark(WatchMark what, @Nullable Long ms) {
        return new WatchMarked("m" + marks.size(), "a", 1, what.word(), ms, null, 400 + marks.size(), 5L, null);
    }

    @Test
    void landed_it_waits_for_as_many_watches_as_the_rules_ask() {
        state = State.LANDED;
        assertEquals(new AttemptPhase.Landed(460, 1, 2, null), live().phase());
    }

    @Test
    void an_official_time_has_the_word_of_its_day_and_is_provisional_until_all_have_signed() {
        state = State.CLOSED;
        assertEquals("signed", PhaseWords.of(live()));
        missing = 1;
        assertEquals(new AttemptPhase.Official(500, 61_230, 1), live().phase());
        assertEquals("provisional", PhaseWords.of(live()));
        assertEquals("called✓ winding✓ holding✓ in the air✓ landed✓ provisional!", strip());
        missing = 0;
        assertEquals("called✓ winding✓ holding✓ in the air✓ landed✓ signed✓", strip());
        day = DayKind.VISITING;
        assertEquals("announced", PhaseWords.of(live()));
        assertEquals("called✓ winding✓ holding✓ in the air✓ landed✓ announced✓", strip());
        day = DayKind.PRACTICE;
        assertEquals("logged", PhaseWords.of(live()));
        assertEquals("winding✓ holding✓ in the air✓ landed✓ logged✓", strip());
    }

    @Test
    void whoever_comes_second_reads_the_phase_as_every_page_says_it() {
        state = State.CLOSED;
        assertQuicker("this attempt was landed, now it is signed. Look again", State.LANDED);
        missing = 1;
        assertQuicker("this attempt was landed, now it is provisional. Look again", State.LANDED);
        day = DayKind.PRACTICE;
        missing = 0;
        assertQuicker("this attempt was landed, now it is logged. Look again", State.LANDED);
        state = State.LANDED;
        assertQuicker("this attempt was logged, now it is landed. Look again", State.CLOSED);
        wind("w1", "A3", 100, "broke@150");
        motor = "B2";
        wind("w2", "B2", 280);
        in(State.WINDING, 280, null);
        assertQuicker("this attempt was called, now it is winding, 2nd. Look again", State.CALLED);
    }

    private void assertQuicker(String words, State then) {
        String told = new Seen(then, 0, 0).moved(state, live()).orElseThrow();
        assertTrue(told.contains(words), told);
    }

    @Test
    void given_up_after_its_release_it_is_void() {
        state = State.VOID;
        assertEquals(new AttemptPhase.DeclaredVoid(500, "reason", false), live().phase());
    }

    @Test
    void the_strip_shows_what_is_done_what_is_now_and_where_it_left_the_way() {
        in(State.HOLDING, 100, 230L);
        assertEquals("called✓ winding✓ holding! in the air… landed… signed…", strip());
        broke = 150L;
        assertEquals("called✓ broke× holding… in the air… landed… signed…", strip());
        broke = null;
        day = DayKind.PRACTICE;
        assertEquals("winding✓ holding! in the air… landed… logged…", strip());
        state = State.VOID;
        day = DayKind.VISITING;
        assertEquals("called✓ winding✓ holding✓ in the air✓ void× announced…", strip());
        state = State.CLOSED;
        assertEquals("called✓ winding✓ holding✓ in the air✓ landed✓ announced✓", strip());
    }

    @Test
    void elsewhere_the_window_opens_between_the_call_and_the_first_turn() {
        day = DayKind.VISITING;
        assertEquals("called! window open… winding… holding… in the air… landed… announced…", strip());
        windowOpen = 50L;
        assertEquals("called✓ window open! winding… holding… in the air… landed… announced…", strip());
        assertEquals("window open", PhaseWords.of(live()));
        assertTrue(PhaseWords.wrongPhase(live(), Hands.CAPTAIN).startsWith("This attempt is called and its window is"));
        in(State.WINDING, 100, null);
        assertEquals("called✓ window open✓ winding! holding… in the air… landed… announced…", strip());
        windowOpen = null;
        assertEquals(
                "called✓ window open… winding! holding… in the air… landed… announced…",
                strip(),
                "wound before the official's word, which can still be tapped");
        state = State.LANDED;
        assertEquals("called✓ winding✓ holding✓ in the air✓ landed! announced…", strip(), "nobody tapped it");
        windowOpen = 50L;
        assertEquals("called✓ window open✓ winding✓ holding✓ in the air✓ landed! announced…", strip());
        var next = LiveAttempt.next("t", AttemptNumber.plain(2), null, null, DayKind.VISITING);
        assertEquals("called", PhaseStrip.of(next).steps().get(0).words());
        assertEquals(PhaseStrip.Mark.LATER, PhaseStrip.of(next).steps().get(1).mark());
        assertEquals("window open", PhaseStrip.of(next).steps().get(1).words());
    }

    private String strip() {
        return PhaseStrip.of(live()).steps().stream()
                .map(step -> step.words()
                        + switch (step.mark()) {
                            case DONE -> "✓";
                            case NOW -> "!";
                            case EXIT -> "×";
                            case LATER -> "…";
                        })
                .collect(Collectors.joining(" "));
    }

    @Test
    void an_act_in_a_wrong_phase_hears_which_phase_it_is_and_what_can_be_done() {
        in(State.HOLDING, 100, 230L);
        assertEquals(
                "This attempt is holding. What can be done now: Released, More turns, Some off, Broke, Run it back,"
                        + " Abandon attempt.",
                PhaseWords.wrongPhase(live(), Hands.CAPTAIN));
        assertEquals(
                "This attempt is holding. What can be done now: Released.",
                PhaseWords.wrongPhase(live(), Hands.TIMEKEEPER),
                "nobody hears of keys that others have");
        assertEquals(
                "This attempt is holding. What can be done now: nothing from here; the captain has the next key.",
                PhaseWords.wrongPhase(live(), Hands.ON_THE_MOTOR));
        in(State.LANDED, 100, 230L);
        String hosting = PhaseWords.wrongPhase(live(), Hands.CAPTAIN);
        assertTrue(hosting.contains("Take the official time") && !hosting.contains("announced"), hosting);
        day = DayKind.VISITING;
        String visiting = PhaseWords.wrongPhase(live(), Hands.CAPTAIN);
        assertTrue(visiting.contains("Count the announced time") && !visiting.contains("official"), visiting);
        day = DayKind.HOSTING;
        state = State.SCRUBBED;
        assertEquals(
                "This attempt is abandoned. Nothing more is done to it.", PhaseWords.wrongPhase(live(), Hands.CAPTAIN));
    }

    @Test
    void a_use_is_more_than_half_of_the_breaking_turns() {
        assertFalse(MotorUses.isUse(1_000, 2_000.0));
        assertTrue(MotorUses.isUse(1_001, 2_000.0));
        assertTrue(MotorUses.isUse(10, null));
        assertFalse(MotorUses.isUse(0, null));
    }
}
