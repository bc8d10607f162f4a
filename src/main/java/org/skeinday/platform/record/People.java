package org.skeinday.platform.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * Names of persons and the coach's PIN, in people.json beside the journal: outside the chain, so that a person can be
 * erased without breaking it.
 */
public final class People {
    static final String FILE = "people.json";

    private final Path path;
    private Map<String, String> names;
    private String pinHash;

    private People(Path path, Map<String, String> names, String pinHash) {
        this.path = path;
        this.names = names;
        this.pinHash = pinHash;
    }

    static People open(Path folder) throws IOException {
        Path path = folder.resolve(FILE);
        Map<String, String> names = new LinkedHashMap<>();
        String pin = "";
        if (Files.exists(path)) {
            JsonNode json = read(path);
            json.path("names")
                    .fields()
                    .forEachRemaining(e -> names.put(e.getKey(), e.getValue().asText()));
            pin = json.path("pin").asText();
        }
        return new People(path, Map.copyOf(names), pin);
    }

    private static JsonNode read(Path path) throws IOException {
        try {
            return Json.MAPPER.readTree(Files.readAllBytes(path));
        } catch (JsonProcessingException e) {
            throw new Damaged(
                    path + " cannot be read: names and the coach's PIN are in it. Put it back from a backup; the"
                            + " record itself is not touched by this.");
        }
    }

    /** The person's display name; an erased or unknown person is called "someone". */
    public synchronized String name(String person) {
        return names.getOrDefault(person, "someone");
    }

    public synchronized Map<String, String> names() {
        return names;
    }

    /** Salted slow hash of the coach's PIN, empty before one was made. */
    public synchronized String pinHash() {
        return pinHash;
    }

    public synchronized void keepPin(String hash) throws IOException {
        write(names, hash);
        pinHash = hash;
    }

    synchronized void add(Map<String, String> more) throws IOException {
        if (more.isEmpty()) {
            return;
        }
        Map<String, String> all = new LinkedHashMap<>(names);
        all.putAll(more);
        write(all, pinHash);
        names = Map.copyOf(all);
    }

    synchronized void erase(Set<String> persons) throws IOException {
        Map<String, String> left = Erasing.without(names, persons);
        if (left.size() < names.size()) {
            write(left, pinHash);
            names = Map.copyOf(left);
        }
    }

    private void write(Map<String, String> all, String pin) throws IOException {
        ObjectNode json = Json.MAPPER.createObjectNode();
        json.put("pin", pin);
        ObjectNode object = json.putObject("names");
        new java.util.TreeMap<>(all).forEach(object::put);
        WholeFile.write(path, json.toPrettyString());
    }
}
