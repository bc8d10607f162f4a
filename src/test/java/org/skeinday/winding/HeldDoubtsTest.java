package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Unlikely;

/** Of a meter whose scale ends at 8 N·mm, in divisions of 0.5 N·mm; the needle crossed two marks. */
class HeldDoubtsTest {
    private static Wind wind(String held) {
        Wind read = new WindFixture()
                .meter(0.5, 8.0)
                .up(20_000, 40_000)
                .phase(WindPhase.STOPPED, 60_000)
                .wind();
        return new Wind(read.begun(), read.phases(), read.marks(), read.floor(), read.counted(), of(held));
    }

    private static List<HeldRead> of(String held) {
        return HeldRead.parse(held, "mN-m", 0.5);
    }

    private static List<Unlikely> asked(String held, String before) {
        return HeldDoubts.asked(wind(""), of(held), of(before)).stream()
                .map(Doubted::why)
                .toList();
    }

    private static List<Doubt> open(Wind wind) {
        return MarkDoubts.of(wind, Optional.empty());
    }

    @Test
    void a_reading_off_the_scale_and_one_above_what_the_needle_can_have_shown_are_asked_about() {
        assertEquals(List.of(Unlikely.HELD_OFF_THE_METER), asked("8.1 at 0:40", ""));
        assertEquals(List.of(Unlikely.HELD_ABOVE_PEAK), asked("1.6 at 0:40; 1.4 at 1:30", ""), "it crossed 1.0");
        assertEquals(List.of(), asked("1.5 at 0:40; 1.0 at 1:30", ""), "below the next mark it may have stood");
        assertEquals(List.of(), asked("8.1 at 0:40", "8.1 at 0:40"), "nobody is asked twice");
    }

    @Test
    void what_was_insisted_upon_stays_asked_about_by_its_numbers() {
        Wind wind = wind("7.8 at 0:40; 1.0 at 1:30");
        Doubt doubt = open(wind).get(0);
        assertEquals(1, open(wind).size());
        assertEquals(Doubt.Kind.HELD_ABOVE_PEAK, doubt.kind());
        assertTrue(doubt.words().contains("7.8 mN-m at 0:40"), doubt.words());
        assertEquals(wind.begun().id(), HeldDoubts.windOf(doubt.markId()).orElseThrow());
        assertEquals(of("1.0 at 1:30"), HeldDoubts.without(wind, doubt.markId()));
        assertNotEquals(open(wind("7.7 at 0:40")).get(0).markId(), doubt.markId(), "another number, asked anew");
        assertEquals(0, MarkDoubts.open(wind, Set.of()), "no tap of the reader's is asked about");
    }
}
