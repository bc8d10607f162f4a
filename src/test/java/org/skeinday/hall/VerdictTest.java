package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.units.Length;

class VerdictTest {
    private static Verdict with(double shortByMm) {
        Length by = Length.ofMillimetres(shortByMm);
        return new Verdict(
                List.of(new Shortfall(
                        Rule.MODEL_TOO_NEAR,
                        "stand",
                        "",
                        "the line",
                        by,
                        Length.ofMillimetres(1200 - shortByMm),
                        Length.ofMillimetres(1200))),
                List.of());
    }

    @Test
    void what_was_not_wrong_before_is_worse() {
        assertEquals(1, with(10).worseThan(Verdict.NOTHING_WRONG).size());
    }

    @Test
    void what_was_as_wrong_before_is_no_worse() {
        assertEquals(List.of(), with(10).worseThan(with(10)));
        assertEquals(List.of(), with(5).worseThan(with(10)));
        assertEquals(List.of(), with(10.5).worseThan(with(10)));
    }

    @Test
    void a_millimetre_nearer_is_worse() {
        assertEquals(1, with(11).worseThan(with(10)).size());
    }

    @Test
    void what_could_be_judged_before_and_cannot_now_is_named() {
        Verdict before = new Verdict(List.of(), List.of("the stretch"));
        Verdict now = new Verdict(List.of(), List.of("the stretch", "the stand"));
        assertEquals(List.of("the stand"), now.newlyUnknown(before));
        assertEquals(List.of(), before.newlyUnknown(now));
    }
}
