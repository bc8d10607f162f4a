package org.skeinday.platform.live;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClockWatchTest {
    private long wallMs = 1_790_000_000_000L;
    private long nanos = 5_000_000_000L;
    private final List<Long> heard = new ArrayList<>();
    private final ClockWatch watch = new ClockWatch(
            new Clock() {
                @Override
                public ZoneId getZone() {
                    return ZoneOffset.UTC;
                }

                @Override
                public Clock withZone(ZoneId zone) {
                    return this;
                }

                @Override
                public Instant instant() {
                    return Instant.ofEpochMilli(wallMs);
                }
            },
            () -> nanos,
            heard::add);

    private void passes(long wall, long monotonic) {
        wallMs += wall;
        nanos += monotonic * 1_000_000;
        watch.look();
    }

    @ParameterizedTest
    @ValueSource(longs = {3_600_000, -3_600_000, 86_400_000, -86_400_000, 600_000, 2_000, -2_000})
    void a_jump_is_told_once_with_its_size(long by) {
        passes(1_000, 1_000);
        passes(1_000 + by, 1_000);
        passes(1_000, 1_000);
        assertEquals(List.of(by), heard);
    }

    @Test
    void a_little_less_than_two_seconds_is_no_jump() {
        passes(2_999, 1_000);
        assertEquals(List.of(), heard);
    }

    @Test
    void the_slow_steering_of_a_clock_is_never_told() {
        for (int i = 0; i < 7_200; i++) {
            passes(1_010, 1_000); // 1 %: far more than any network steers
        }
        assertEquals(List.of(), heard);
    }
}
