package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.units.Length;

class HallTest {
    private static Hall hall(@Nullable Double ceilingM, @Nullable Double lowestM, @Nullable Double temperature) {
        return new Hall(
                "sports hall",
                ceilingM == null ? null : Length.ofMetres(ceilingM),
                lowestM == null ? null : new Hall.Obstruction("basketball hoop", Length.ofMetres(lowestM)),
                null,
                null,
                null,
                temperature,
                null,
                null,
                null);
    }

    @Test
    void a_model_may_climb_to_the_lowest_obstruction_else_to_the_ceiling() {
        assertEquals(Optional.of(Length.ofMetres(6.5)), hall(8.0, 6.5, null).clearHeight());
        assertEquals(Optional.of(Length.ofMetres(8)), hall(8.0, null, null).clearHeight());
        assertEquals(Optional.empty(), hall(null, null, null).clearHeight());
    }

    @Test
    void an_obstruction_is_not_above_the_ceiling() {
        assertEquals(Optional.of(Length.ofMetres(8)), hall(8.0, 8.0, null).clearHeight());
        assertThrows(IllegalArgumentException.class, () -> hall(8.0, 8.001, null));
    }

    @Test
    void more_than_five_degrees_colder_than_the_tests_is_said() {
        assertEquals(Optional.empty(), hall(8.0, null, 16.0).coldWords(21.0));
        assertEquals(
                Optional.of("6 °C colder than where the motors were tested: rubber is stiffer and breaks earlier. Keep"
                        + " motors warm."),
                hall(8.0, null, 15.0).coldWords(21.0));
        assertEquals(Optional.empty(), hall(8.0, null, null).coldWords(21.0));
        assertEquals(Optional.empty(), hall(8.0, null, 5.0).coldWords(null));
    }

    @Test
    void drift_is_said_by_the_clock_at_the_mount() {
        assertEquals(0, Air.towardsOClock(12, null).towardsDegrees());
        assertEquals(90, Air.towardsOClock(3, 0.2).towardsDegrees());
        assertThrows(IllegalArgumentException.class, () -> Air.towardsOClock(13, null));
        assertThrows(IllegalArgumentException.class, () -> new Air(360, null));
    }

    @Test
    void three_o_clock_is_to_the_right() {
        Spot spot = new Spot(0, 0).towards(90, 1000);
        assertEquals(0, spot.alongMm(), 1e-9);
        assertEquals(-1000, spot.besideMm(), 1e-9);
    }
}
