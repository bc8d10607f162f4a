package org.skeinday.contest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StationCheckTest {
    private static StationAdded station(String mount, Double pull, String span, Double reads) {
        return new StationAdded(
                "s",
                "Table",
                mount,
                pull,
                "2026-05-01",
                10.0,
                "2026-05-01",
                "crank",
                true,
                "wire 1",
                null,
                null,
                span,
                "2026-05-01",
                2.0,
                "2 g",
                reads,
                reads + " g",
                null,
                null,
                null,
                null,
                "with",
                "2026-05-01",
                null);
    }

    private static final String GOOD = "0.2=0.2 | 0.4=0.41 | 0.6=0.61";

    @Test
    void a_place_with_all_its_tests_done_has_nothing_open() {
        assertEquals(List.of(), StationCheck.open(station("table", 10.0, GOOD, 2.01), OptionalDouble.empty()));
    }

    /** Both sides of each bound. */
    @ParameterizedTest
    @CsvSource({
        "table, 9.9, 0.2=0.2 | 0.4=0.41 | 0.6=0.61, 2.0, pulled with 9.9 N only",
        "held, 10, 0.2=0.2 | 0.4=0.41 | 0.6=0.61, 2.0, not advised",
        "post, 10, 0.2=0.212 | 0.4=0.41 | 0.6=0.61, 2.0, off by +6.0 %",
        "post, 10, 0.2=0.2 | 0.4=0.375 | 0.6=0.61, 2.0, off by -6.3 %",
        "post, 10, 0.2=0.2 | 0.4=0.41 | 0.6=0.61, 2.03, The scale is off by +1.5 %"
    })
    void what_is_open_is_said(String mount, double pull, String span, double reads, String words) {
        List<String> open = StationCheck.open(station(mount, pull, span, reads), OptionalDouble.empty());
        assertEquals(1, open.size(), open.toString());
        assertTrue(open.get(0).contains(words), open.toString());
    }

    @Test
    void an_error_just_within_the_bound_is_left_alone() {
        assertEquals(
                List.of(),
                StationCheck.open(
                        station("post", 10.0, "0.2=0.21 | 0.4=0.4 | 0.6=0.6", 2.0199), OptionalDouble.empty()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "0.2",
                "0.2=0.2",
                "0.2=0.2 | 0.4=0.4",
                "0.2=0.2 | 0.2=0.21 | 0.4=0.4",
                "0=1 | 2=2 | 3=3",
                "a=b | 1=1 | 2=2"
            })
    void a_span_needs_three_known_torques(String text) {
        assertThrows(IllegalArgumentException.class, () -> Span.parse(text));
    }

    @Test
    void three_clean_winds_open_the_lower_ceiling_and_five_the_full_one() {
        assertEquals("with somebody beside", new CrewAdded("p", "", "winds", 2, null).mayWind());
        assertEquals("to the lower ceiling", new CrewAdded("p", "", "winds", 3, null).mayWind());
        assertEquals("to the lower ceiling", new CrewAdded("p", "", "winds", 4, null).mayWind());
        assertEquals("to the full ceiling", new CrewAdded("p", "", "winds", 5, null).mayWind());
        assertEquals("", new CrewAdded("p", "", "reads", 5, null).mayWind());
    }

    @Test
    void todays_motors_say_what_the_mount_must_hold() {
        assertEquals(List.of(), StationCheck.open(station("table", 12.0, GOOD, 2.01), OptionalDouble.of(12)));
        assertEquals(
                List.of("The mount was pulled with 12 N only; test it with 13 N."),
                StationCheck.open(station("table", 12.0, GOOD, 2.01), OptionalDouble.of(13)));
    }
}
