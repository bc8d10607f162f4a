package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** A file that memory cannot hold unfolded is refused before it is opened. */
class SpareMemoryTest {
    @Test
    void a_small_file_is_looked_through() {
        assertDoesNotThrow(() -> SpareMemory.require(1_000));
    }

    @Test
    void one_that_takes_more_than_java_may_ever_have_is_refused_with_a_way_out() {
        long bytes = Runtime.getRuntime().maxMemory() / 10;
        assertTrue(SpareMemory.needed(bytes) > Runtime.getRuntime().maxMemory());
        Refusal refusal = assertThrows(Refusal.class, () -> SpareMemory.require(bytes));
        assertEquals(503, refusal.status());
        assertTrue(refusal.sentence().contains("split the file"), refusal.sentence());
    }
}
