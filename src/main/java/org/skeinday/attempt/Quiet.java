package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Facts {@code quiet.began} and {@code quiet.ended}: nobody was helped from the call to the sign-off, as the event's
 * terms ask.
 *
 * @param toMs null while it lasts
 */
public record Quiet(String attemptId, long fromMs, @Nullable Long toMs) {}
