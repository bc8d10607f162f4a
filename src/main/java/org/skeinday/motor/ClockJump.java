package org.skeinday.motor;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code clock.jumped}: the laptop's clock and its monotonic clock came apart. Waits go on as if the clock had been
 * set; when a person says that the laptop slept, they go by the clock on the wall.
 *
 * @param atMs after the jump, milliseconds since 1970 UTC
 * @param byMs forward, negative when it was set back: then it cannot have slept
 * @param slept null while nobody has said
 */
public record ClockJump(
        String id, long atMs, long byMs, @Nullable Boolean slept) {}
