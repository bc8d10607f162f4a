package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class CrewLineIdTest {
    @Test
    void is_read_as_it_was_written_with_an_event_or_without() {
        for (String event : new String[] {"", "e1"}) {
            CrewLineId line = new CrewLineId("p7", event);
            assertEquals(line, CrewLineId.parse(line.toString()));
        }
    }

    @Test
    void another_things_id_is_none() {
        assertThrows(IllegalArgumentException.class, () -> CrewLineId.parse("p7"));
    }
}
