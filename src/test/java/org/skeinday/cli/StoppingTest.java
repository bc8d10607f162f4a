package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class StoppingTest {
    private final StringWriter said = new StringWriter();

    private int code(Stopping.Close close, Duration most) {
        return Stopping.code(close, most, new PrintWriter(said, true));
    }

    @Test
    void closed_in_time_it_ends_with_0_and_says_nothing() {
        assertEquals(0, code(() -> {}, Duration.ofSeconds(5)));
        assertEquals("", said.toString());
    }

    @Test
    void what_hangs_is_left_and_said() {
        assertEquals(0, code(() -> new CountDownLatch(1).await(), Duration.ofMillis(50)));
        assertTrue(said.toString().contains("All that was saved is there"), said.toString());
    }

    @Test
    void what_fails_ends_with_6_and_is_said() {
        int code = code(
                () -> {
                    throw new IOException("No space left on device");
                },
                Duration.ofSeconds(5));
        assertEquals(6, code);
        assertTrue(said.toString().contains("No space left on device"), said.toString());
    }
}
