package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The start is rehearsed with a real server: it answers once, as the real one would. */
class RehearsalTest {
    @Test
    void a_rehearsal_gets_the_page_that_says_that_nothing_is_there() {
        assertEquals("HTTP/1.1 404 Not Found", Rehearsal.once());
    }
}
