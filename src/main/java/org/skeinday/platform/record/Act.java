package org.skeinday.platform.record;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What a person did on a device, before anything was decided about it.
 *
 * @param id 32 lower-case hexadecimal digits (128 random bits), made on the device
 * @param kind the deed, for example {@code attempt.call}
 * @param device id of the device
 * @param person id of the person, empty when nobody was chosen
 * @param deviceTime the device's own clock when it was done: evidence, never used to decide
 * @param content what was entered, as the kind's content record
 * @param brought by whom, when it came in a file and not from the device itself
 * @param sent the request as it came, where the content holds more (a moment, what was last typed); null where the content
 *     is all that was sent. By it a repeat is known as one
 */
public record Act(
        String id,
        String kind,
        String device,
        String person,
        Instant deviceTime,
        JsonNode content,
        @Nullable Brought brought,
        @Nullable String sent) {
    /** The device and the person that brought somebody else's entries in; the person empty when nobody was chosen. */
    public record Brought(String device, String person) {}

    public Act(String id, String kind, String device, String person, Instant deviceTime, JsonNode content) {
        this(id, kind, device, person, deviceTime, content, null, null);
    }

    /** From a file that others bring. */
    public Act(
            String id,
            String kind,
            String device,
            String person,
            Instant deviceTime,
            JsonNode content,
            @Nullable Brought brought) {
        this(id, kind, device, person, deviceTime, content, brought, null);
    }

    /** The same, with the request that it came as. */
    public Act sentAs(String request) {
        return new Act(id, kind, device, person, deviceTime, content, brought, request);
    }

    public Act {
        if (!id.matches("[0-9a-f]{32}")) {
            throw new IllegalArgumentException("An act's id must be 32 hexadecimal digits, but was '" + id + "'");
        }
    }
}
