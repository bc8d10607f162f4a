package org.skeinday.contest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.motor.Direction;

class WinderOutputTest {
    @ParameterizedTest
    @CsvSource({"with, cw, cw", "with, acw, acw", "against, cw, acw", "against, acw, cw"})
    void the_crank_is_turned_so_that_the_hook_turns_as_it_must(String output, String hook, String crank) {
        assertEquals(Direction.of(crank), WinderOutput.of(output).crankFor(Direction.of(hook)));
    }

    private static StationAdded station(String turns, String seen, String seenBy) {
        return new StationAdded(
                "s",
                "Table",
                "table",
                20.0,
                "2026-05-01",
                10.0,
                "2026-05-01",
                "none",
                false,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                turns,
                seen,
                seenBy);
    }

    @Test
    void a_direction_that_nobody_has_seen_at_the_hook_is_not_known() {
        assertEquals(Optional.empty(), station(null, null, null).output());
        assertEquals(Optional.empty(), station("with", null, null).output());
        StationAdded seen = station(null, null, null).outputSeen(WinderOutput.AGAINST, "2026-06-01", "p1");
        assertEquals(Optional.of(WinderOutput.AGAINST), seen.output());
        assertEquals("p1", seen.outputCheckedBy());
        assertEquals(seen, seen.ratioChecked("2026-05-01"));
    }

    @Test
    void until_then_it_stands_among_what_is_to_be_done_at_the_winding_place() {
        List<String> open = StationCheck.open(station("with", null, null), OptionalDouble.empty());
        assertEquals(
                List.of("Watch the hook over one marked turn of the crank: does it turn with or against it?"), open);
        assertEquals(List.of(), StationCheck.open(station("with", "2026-06-01", null), OptionalDouble.empty()));
    }

    @Test
    void whoever_watched_the_hook_says_which_way_it_turned() {
        var nothing = assertThrows(IllegalArgumentException.class, () -> station(null, "2026-06-01", null));
        assertTrue(nothing.getMessage().contains("with or against the crank, but nothing is said"));
        var word = assertThrows(IllegalArgumentException.class, () -> station("backwards", "2026-06-01", null));
        assertTrue(word.getMessage().contains("with, against, but was 'backwards'"), word.getMessage());
    }
}
