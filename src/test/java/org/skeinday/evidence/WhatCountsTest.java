package org.skeinday.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class WhatCountsTest {
    private static final String TOUCHED = "touched at 0:31.0";

    @Test
    void a_flight_with_a_contact_is_undecided_until_somebody_says() {
        assertEquals(Counts.yes(), WhatCounts.flight(false, "", "", ""));
        assertEquals(Counts.not(NotCounted.UNDECIDED, TOUCHED), WhatCounts.flight(false, "", "", TOUCHED));
        assertEquals(
                "undecided: touched at 0:31.0",
                WhatCounts.flight(false, "", "", TOUCHED).words());
        assertEquals(Counts.yes(), WhatCounts.flight(true, "", "", TOUCHED));
        assertEquals(Counts.leftOut("hit a beam"), WhatCounts.flight(true, "hit a beam", "", TOUCHED));
    }

    @Test
    void a_steered_flight_is_left_out_whoever_says_that_it_counts_and_a_persons_reason_comes_first() {
        Counts steered = WhatCounts.flight(true, "", "steered with a pole", "");
        assertEquals(NotCounted.STEERED, steered.because());
        assertEquals("left out: steered with a pole", steered.words());
        assertEquals(
                "hit a beam",
                WhatCounts.flight(true, "hit a beam", "steered with a pole", "").reason());
    }

    @Test
    void an_offered_number_counts_once_it_is_confirmed_or_another_one_is_typed() {
        ValueMarks offered = marks(false, Source.OFFERED);
        assertEquals(NotCounted.OFFERED, of(0.5, offered, "").because());
        assertEquals(Counts.yes(), of(0.6, offered, ""));
        assertEquals(Counts.yes(), of(0.5, marks(true, Source.OFFERED), ""));
        assertEquals(Source.TYPED, offered.source(Measured.LAUNCH_TORQUE, 0.6));
    }

    @Test
    void a_doubted_number_counts_once_it_is_confirmed() {
        String doubted = "off the scale";
        assertEquals(NotCounted.DOUBTED, of(0.5, ValueMarks.NONE, doubted).because());
        assertEquals(Counts.yes(), of(0.5, marks(true, Source.TYPED), doubted));
        assertEquals(
                NotCounted.DOUBTED, of(0.6, marks(true, Source.TYPED), doubted).because());
    }

    @Test
    void of_numbers_that_contradict_each_other_all_are_doubted() {
        var left = FlightEvidence.good().doubting(List.of(new Doubted(Unlikely.MORE_LEFT_THAN_WOUND, "330 of 200")));
        assertEquals(
                NotCounted.DOUBTED, left.measured(Measured.REMAINING, 330.0).because());
        assertEquals(
                NotCounted.DOUBTED, left.measured(Measured.CRANK_TURNS, 200.0).because());
        assertEquals(
                NotCounted.DOUBTED,
                left.measured(Measured.BACK_OFF, 5.0).because(),
                "what was taken off is one of them");
        assertTrue(left.measured(Measured.BACK_OFF, null).isYes(), "where nobody told it, nothing is doubted");
        assertTrue(left.measured(Measured.TIME, 90_000.0).isYes());
        assertEquals(List.of(Measured.LAUNCH_TORQUE, Measured.PEAK_TORQUE), Unlikely.LAUNCH_ABOVE_PEAK.numbers());
        assertEquals(
                List.of(Measured.TIME, Measured.CRANK_TURNS, Measured.BACK_OFF, Measured.REMAINING),
                Unlikely.UNUSUAL_SPEED.numbers(),
                "all that the mean speed is made of");
    }

    @Test
    void no_number_of_a_flight_that_does_not_count_counts() {
        FlightEvidence out = FlightEvidence.of(Counts.leftOut("hit a beam"));
        assertEquals("left out: hit a beam", out.counts(Measured.TIME, 1000.0).words());
        assertTrue(out.measured(Measured.TIME, 1000.0).isYes());
    }

    @Test
    void a_wind_counts_when_it_is_counted_without_a_metronome_and_no_reading_is_asked_about() {
        assertTrue(WhatCounts.wind(true, false, 0).isYes());
        assertEquals(
                NotCounted.TURNS_NOT_COUNTED, WhatCounts.wind(false, true, 1).because());
        assertEquals(NotCounted.TO_A_METRONOME, WhatCounts.wind(true, true, 1).because());
        assertEquals(
                "doubted: one reading is asked about",
                WhatCounts.wind(true, false, 1).words());
    }

    @Test
    void a_count_that_is_doubted_keeps_the_turns_out_and_a_doubted_reading_does_not() {
        Counts doubted = WhatCounts.turnsOfWind(true, false, "", false, "such a motor breaks at 2700");
        assertEquals("doubted: such a motor breaks at 2700", doubted.words());
        assertEquals(doubted, WhatCounts.readingsOfWind(doubted, true, 0), "readings without turns say nothing");
        Counts turns = WhatCounts.turnsOfWind(true, false, "", false, "");
        assertTrue(turns.isYes());
        assertEquals(
                NotCounted.DOUBTED, WhatCounts.readingsOfWind(turns, false, 2).because());
        assertEquals(
                NotCounted.OFFERED, WhatCounts.readingsOfWind(turns, true, 2).because());
        Counts offered = WhatCounts.turnsOfWind(true, false, "", true, "");
        assertEquals(NotCounted.OFFERED, offered.because());
        assertEquals(
                "left out: the winder slipped",
                WhatCounts.turnsOfWind(true, false, "the winder slipped", true, "")
                        .words());
    }

    @Test
    void what_cannot_be_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> Counts.leftOut(" "));
        assertThrows(IllegalArgumentException.class, () -> new Counts(null, "why"));
        assertThrows(
                IllegalArgumentException.class,
                () -> new ValueMarked("f", "launch-torque", null, "typed", true, null, null));
        assertThrows(
                IllegalArgumentException.class, () -> new ValueMarked("f", "flight", 1.0, "typed", true, null, null));
        assertThrows(
                IllegalArgumentException.class, () -> new ValueMarked("f", "mood", 1.0, "typed", true, null, null));
        assertFalse(Counts.leftOut("x").isYes());
    }

    private static Counts of(double number, ValueMarks marks, String doubted) {
        return WhatCounts.value(Measured.LAUNCH_TORQUE, number, marks, doubted);
    }

    private static ValueMarks marks(boolean confirmed, Source source) {
        return ValueMarks.of(
                List.of(new ValueMarked("f", "launch-torque", 0.5, source.word(), confirmed, "person", 1L)));
    }
}
