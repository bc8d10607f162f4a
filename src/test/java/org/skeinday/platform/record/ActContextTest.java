package org.skeinday.platform.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class ActContextTest {
    private final ActContext context = new ActContext("a1", Instant.EPOCH, ZoneOffset.UTC, "laptop", "");

    @Test
    void the_acts_own_id_is_given_to_one_thing_alone() {
        assertEquals("a1-0", context.ownId());

        String refusal =
                assertThrows(IllegalStateException.class, context::ownId).getMessage();
        assertTrue(refusal.contains("a1"), refusal);
    }

    @Test
    void naming_what_an_act_made_gives_nothing_away() {
        assertEquals("a1-0", ActContext.ownIdOf("a1"));
        assertEquals("a1-0", context.ownId());
    }

    @Test
    void every_other_thing_has_another_id() {
        String own = context.ownId();
        String first = context.nextId();
        String second = context.nextId();

        assertNotEquals(own, first);
        assertNotEquals(first, second);
        assertTrue(first.compareTo(second) < 0, first + " is made before " + second);
        assertEquals("a1", ActContext.actOf(second));
    }
}
