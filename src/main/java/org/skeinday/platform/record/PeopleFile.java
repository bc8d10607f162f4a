package org.skeinday.platform.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * people.json as it stands.
 *
 * @param folder the id of the folder that it belongs to; empty in a file of an older program
 * @param pin hash of the coach's PIN, empty before one was made
 */
record PeopleFile(String folder, String pin, Map<String, String> names) {
    static final String NAME = "people.json";

    PeopleFile {
        names = Map.copyOf(names);
    }

    /**
     * Reads it, with its checksum.
     *
     * @param wanted the folder's own id; empty where any will do
     * @throws Damaged when it is none, was altered, or belongs to another folder
     */
    static PeopleFile read(Path file, String wanted) throws IOException {
        PeopleFile read = read(file);
        if (!wanted.isEmpty() && !read.folder().equals(wanted)) {
            throw damaged(
                    file,
                    read.folder().isEmpty() ? "does not say whose people it holds" : "holds the people of another day");
        }
        return read;
    }

    private static PeopleFile read(Path file) throws IOException {
        JsonNode json = json(file);
        if (json == null
                || !json.isObject()
                || !json.path("pin").isTextual()
                || !json.path("names").isObject()) {
            throw damaged(file, "cannot be read");
        }
        Map<String, String> names = new LinkedHashMap<>();
        for (var entry : json.path("names").properties()) {
            if (!entry.getValue().isTextual()) {
                throw damaged(file, "cannot be read");
            }
            names.put(entry.getKey(), entry.getValue().asText());
        }
        var read =
                new PeopleFile(json.path("folder").asText(""), json.path("pin").asText(), names);
        boolean older = !json.has("folder") && !json.has("sum");
        if (!older && !json.path("sum").asText().equals(read.sum())) {
            throw damaged(file, "was altered: it does not fit its checksum");
        }
        return read;
    }

    private static @org.jspecify.annotations.Nullable JsonNode json(Path file) throws IOException {
        try {
            return Json.MAPPER.readTree(Files.readAllBytes(file));
        } catch (JsonProcessingException e) {
            return null;
        }
    }

    private static Damaged damaged(Path file, String what) {
        return new Damaged(file + " " + what + ": names and the coach's PIN are in it");
    }

    void write(Path file) throws IOException {
        WholeFile.write(file, json().put("sum", sum()).toPrettyString());
    }

    /** SHA-256 of all that stands in the file before it. */
    private String sum() {
        return Sha.hex(json().toString());
    }

    private ObjectNode json() {
        ObjectNode json = Json.MAPPER.createObjectNode().put("folder", folder).put("pin", pin);
        ObjectNode object = json.putObject("names");
        new TreeMap<>(names).forEach(object::put);
        return json;
    }
}
