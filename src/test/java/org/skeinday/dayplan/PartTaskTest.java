package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;
import org.skeinday.attempt.Part;

class PartTaskTest {
    @Test
    void each_part_is_read_as_it_was_written() {
        for (Part part : Part.values()) {
            PartTask task = PartTask.of("Curlew fly", 2, part);
            assertEquals(task, PartTask.parse(task.toString()));
        }
    }

    @Test
    void what_is_no_part_of_an_attempt_keeps_its_name() {
        PartTask away = PartTask.parse("p7 away");
        assertEquals("p7 away", away.attempt());
        assertNull(away.part());
    }
}
