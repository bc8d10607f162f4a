package org.skeinday.steps;

import java.util.Optional;

/**
 * What a winding place's list is about: one place at an event. Records made before each place had a list of its own have the
 * event alone.
 *
 * @param stationId the winding place
 */
public record PlaceSubject(String eventId, String stationId) {
    private static final char BETWEEN = '~';

    /** Empty for a text that {@link #toString} does not make. */
    public static Optional<PlaceSubject> parse(String subject) {
        int between = subject.indexOf(BETWEEN);
        return between < 0
                ? Optional.empty()
                : Optional.of(new PlaceSubject(subject.substring(0, between), subject.substring(between + 1)));
    }

    /** As the record, forms and addresses have it. */
    @Override
    public String toString() {
        return eventId + BETWEEN + stationId;
    }
}
