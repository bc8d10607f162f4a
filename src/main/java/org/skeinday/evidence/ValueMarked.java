package org.skeinday.evidence;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code flight.marked}: where one value of a flight came from, or that somebody confirmed it; a later one about the
 * same value stands in place of it. It is about the number that it names: with another number in its place it says
 * nothing any more.
 *
 * @param flightId of an attempt or of a practice flight; of a wind, or of the step that says that a motor broke, the same
 * @param measured a word of {@link Measured}; of the flight itself it says how the row came and who decided of it
 * @param number in the record's own unit: crank turns (of a break motor turns), N·mm or ms; null for the flight itself
 * @param source a word of {@link Source}
 * @param confirmed whether somebody said that it was so
 * @param confirmedBy person id, null where the device has none
 * @param atMs by the server's clock, ms since 1970 UTC; null where a file did not say
 * @param asked whether it was still asked about where a file took it out, of marks of the needle that the file has not;
 *     null elsewhere: what is unlikely of a number follows from the number
 */
public record ValueMarked(
        String flightId,
        String measured,
        @Nullable Double number,
        String source,
        boolean confirmed,
        @Nullable String confirmedBy,
        @Nullable Long atMs,
        @Nullable Boolean asked) {
    /** Of which nothing else is asked than what follows from the number. */
    public ValueMarked(
            String flightId,
            String measured,
            @Nullable Double number,
            String source,
            boolean confirmed,
            @Nullable String confirmedBy,
            @Nullable Long atMs) {
        this(flightId, measured, number, source, confirmed, confirmedBy, atMs, null);
    }

    public ValueMarked {
        Preconditions.filled("The flight", flightId);
        if ((Measured.of(measured) == Measured.FLIGHT) != (number == null)) {
            throw new IllegalArgumentException("A mark must name the number that it is about, and of the flight itself"
                    + " none, but of " + measured + " it was " + number);
        }
        Source.of(source); // refuses what is none
    }

    public Measured about() {
        return Measured.of(measured);
    }

    /** Whether it came in as asked about and nobody has confirmed it. */
    public boolean isAsked() {
        return Boolean.TRUE.equals(asked) && !confirmed;
    }

    public Source from() {
        return Source.of(source);
    }
}
