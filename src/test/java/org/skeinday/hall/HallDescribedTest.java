package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.skeinday.units.Length;

class HallDescribedTest {
    private static final long HOUR = 3_600_000;

    private static HallDescribed hall(@Nullable Double ceilingM, Double... obstructionsM) {
        List<HallDescribed.Obstruction> hanging = new ArrayList<>();
        for (Double m : Arrays.asList(obstructionsM)) {
            hanging.add(new HallDescribed.Obstruction("hoop " + hanging.size(), m * 1000, m + " m"));
        }
        return new HallDescribed(
                "sports hall", ceilingM == null ? null : ceilingM * 1000, null, hanging, List.of(), "", 0, null);
    }

    private static HallDescribed keeping(HallDescribed.Kept... kept) {
        return new HallDescribed("sports hall", null, null, List.of(), List.of(kept), "", 0, null);
    }

    private static AirMeasured air(long atMs, @Nullable Double celsius) {
        return new AirMeasured("a" + atMs, "sports hall", celsius, 40.0, atMs, null);
    }

    @Test
    void a_model_may_climb_to_the_lowest_obstruction_else_to_the_ceiling() {
        assertEquals(Optional.of(Length.ofMetres(6.5)), hall(8.0, 7.0, 6.5).clearHeight());
        assertEquals(Optional.of(Length.ofMetres(8)), hall(8.0).clearHeight());
        assertEquals(Optional.empty(), hall(null).clearHeight());
    }

    @Test
    void an_obstruction_is_not_above_the_ceiling() {
        assertEquals(Optional.of(Length.ofMetres(8)), hall(8.0, 8.0).clearHeight());
        assertThrows(IllegalArgumentException.class, () -> hall(8.0, 8.001));
    }

    @ParameterizedTest
    @EnumSource(Distance.class)
    void each_distance_can_be_set_alone_and_the_others_stay_usual(Distance distance) {
        Length set = Length.ofMillimetres(distance.usual().millimetres() + 1);
        Separation least = keeping(new HallDescribed.Kept(distance.word(), set.millimetres(), "typed"))
                .separation();
        List<Length> is = lengths(least);
        List<Length> usual = lengths(Separation.usual());
        for (Distance each : Distance.values()) {
            assertEquals(each == distance ? set : usual.get(each.ordinal()), is.get(each.ordinal()), each.word());
        }
    }

    private static List<Length> lengths(Separation s) {
        return List.of(s.model(), s.people(), s.reader(), s.zoneLength(), s.zoneHalfWidth(), s.lanes(), s.standing());
    }

    @Test
    void a_distance_that_cannot_be_meant_is_refused() {
        keeping(new HallDescribed.Kept("standing", 5000, "5 m"));
        assertThrows(IllegalArgumentException.class, () -> new HallDescribed.Kept("standing", 5001, "5.001 m"));
        assertThrows(IllegalArgumentException.class, () -> new HallDescribed.Kept("model", 0, "0"));
        assertThrows(IllegalArgumentException.class, () -> new HallDescribed.Kept("moat", 1000, "1 m"));
    }

    @Test
    void more_than_five_degrees_colder_than_the_tests_is_said() {
        assertEquals(Optional.empty(), air(0, 16.0).coldWords(OptionalDouble.of(21)));
        assertEquals(
                Optional.of("6 °C colder than where the motors were tested: rubber is stiffer and breaks earlier. Keep"
                        + " motors warm."),
                air(0, 15.0).coldWords(OptionalDouble.of(21)));
        assertEquals(Optional.empty(), air(0, null).coldWords(OptionalDouble.of(21)));
        assertEquals(Optional.empty(), air(0, 5.0).coldWords(OptionalDouble.empty()));
    }

    @Test
    void the_air_of_a_moment_is_what_was_measured_closest_to_it_and_not_over_two_hours_away() {
        List<AirMeasured> day = List.of(air(0, 18.0), air(3 * HOUR, 21.0));
        assertEquals("a0", AirMeasured.near(day, HOUR).orElseThrow().id());
        assertEquals(
                "a" + 3 * HOUR, AirMeasured.near(day, 2 * HOUR).orElseThrow().id());
        assertEquals("a0", AirMeasured.near(day, HOUR + HOUR / 2).orElseThrow().id());
        assertEquals(
                "a" + 3 * HOUR, AirMeasured.near(day, 5 * HOUR).orElseThrow().id());
        assertEquals(Optional.empty(), AirMeasured.near(day, 5 * HOUR + 1));
        assertEquals(OptionalDouble.of(19.5), AirMeasured.meanCelsius(day, List.of(0L, 3 * HOUR, 9 * HOUR)));
    }

    @Test
    void air_without_any_number_is_none() {
        assertThrows(IllegalArgumentException.class, () -> new AirMeasured("a", "hall", null, null, 0, null));
        assertThrows(IllegalArgumentException.class, () -> new AirMeasured("a", "hall", 61.0, null, 0, null));
        assertThrows(IllegalArgumentException.class, () -> new AirMeasured("a", "hall", null, 101.0, 0, null));
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
