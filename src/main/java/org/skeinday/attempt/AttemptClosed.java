package org.skeinday.attempt;

/**
 * Fact {@code attempt.closed}: the readings were reduced to the official time.
 *
 * @param officialMs milliseconds
 * @param how the reduction in words, with every reading
 */
public record AttemptClosed(String attemptId, long atMs, long officialMs, String how) {}
