package org.skeinday.steps;

import java.util.Optional;

/**
 * What a model's list is about: a model at an event, which has no id of its own.
 *
 * @param eventId whose entry the model is flown by
 */
public record ModelSubject(String eventId, String modelId) {
    private static final char BETWEEN = '~';

    /** Empty for a text that {@link #toString} does not make. */
    public static Optional<ModelSubject> parse(String subject) {
        int between = subject.indexOf(BETWEEN);
        return between < 0
                ? Optional.empty()
                : Optional.of(new ModelSubject(subject.substring(0, between), subject.substring(between + 1)));
    }

    /** As the record, forms and addresses have it. */
    @Override
    public String toString() {
        return eventId + BETWEEN + modelId;
    }
}
