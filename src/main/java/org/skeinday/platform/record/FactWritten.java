package org.skeinday.platform.record;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;

/**
 * One fact of a line of the journal, with who wrote it.
 *
 * @param n the line's number
 * @param place of the fact in its line, from 0
 * @param atMs the server's time when it was decided, ms since 1970
 * @param device that the act came from; {@code laptop} for the laptop itself
 * @param person id, empty when nobody was chosen
 * @param broughtBy the device that brought it in a file; null where the device sent it itself
 * @param kind for example {@code window.changed}
 */
public record FactWritten(
        long n,
        int place,
        long atMs,
        String device,
        String person,
        @Nullable String broughtBy,
        String kind,
        JsonNode body) {

    /** A field of the fact as text; null where it has none. */
    public @Nullable String text(String field) {
        JsonNode value = body.get(field);
        return value == null || value.isNull() ? null : value.asText();
    }
}
