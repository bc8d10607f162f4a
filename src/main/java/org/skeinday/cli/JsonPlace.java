package org.skeinday.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A value in a JSON file with the way to it, so that what is wrong is said with its place.
 *
 * @param path for example {@code tasks[2].duration}; empty for the whole file
 */
record JsonPlace(JsonNode node, String file, String path) {
    /** Of times and spans. */
    static final long LARGEST = 1_000_000_000L;

    IllegalArgumentException wrong(String must) {
        return new IllegalArgumentException(file + (path.isEmpty() ? "" : " " + path) + ": " + must);
    }

    /** Not there, or null. */
    boolean isAbsent() {
        return node.isMissingNode() || node.isNull();
    }

    JsonPlace at(String key) {
        JsonNode inner = node.get(key);
        return new JsonPlace(
                inner == null ? MissingNode.getInstance() : inner, file, path.isEmpty() ? key : path + "." + key);
    }

    /** Refuses what is no object and keys that are not known. */
    void object(String... known) {
        if (!node.isObject()) {
            throw wrong("must be an object in braces, but " + was());
        }
        node.fieldNames().forEachRemaining(name -> {
            if (!List.of(known).contains(name)) {
                throw at(name).wrong("is not known here; there are " + String.join(", ", known));
            }
        });
    }

    List<JsonPlace> elements() {
        if (!isAbsent() && !node.isArray()) {
            throw wrong("must be a list in brackets, but " + was());
        }
        List<JsonPlace> all = new ArrayList<>();
        for (int i = 0; i < node.size(); i++) {
            all.add(new JsonPlace(node.get(i), file, path + "[" + i + "]"));
        }
        return all;
    }

    /** Of an object, in the order of the file. */
    Map<String, JsonPlace> members() {
        if (!isAbsent() && !node.isObject()) {
            throw wrong("must be an object in braces, but " + was());
        }
        Map<String, JsonPlace> all = new LinkedHashMap<>();
        node.fieldNames().forEachRemaining(name -> all.put(name, at(name)));
        return all;
    }

    String text() {
        if (!node.isTextual() || node.asText().isBlank()) {
            throw wrong("must be a name in quotes, but " + was());
        }
        return node.asText();
    }

    long whole(long low, long high) {
        boolean fits = node.isIntegralNumber() && node.canConvertToLong();
        if (!fits || node.asLong() < low || node.asLong() > high) {
            throw wrong("must be a whole number from " + low + " to " + high + ", but " + was());
        }
        return node.asLong();
    }

    @Nullable
    Long maybeTime() {
        return isAbsent() ? null : (Long) whole(-LARGEST, LARGEST);
    }

    private String was() {
        return node.isMissingNode() ? "it is missing" : "was " + node;
    }
}
