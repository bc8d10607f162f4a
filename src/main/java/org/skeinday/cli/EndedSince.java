package org.skeinday.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.Stream;
import org.skeinday.platform.record.Json;

/**
 * Devices that the record in a folder has ended and that an older backup brings back as joined: whoever puts it in the
 * record's place has to end them again. The record may be damaged, which may be why: what cannot be read is passed over.
 */
final class EndedSince {
    private static final String JOURNAL = "journal.jsonl";

    private final Set<String> joined = new HashSet<>();
    private final Set<String> ended = new HashSet<>();

    private EndedSince(Path folder) throws IOException {
        Path journal = folder.resolve(JOURNAL);
        if (Files.exists(journal)) {
            try (Stream<String> lines = Files.lines(journal, StandardCharsets.ISO_8859_1)) { // any byte is read
                lines.filter(line -> line.contains("\"device.joined\"") || line.contains("\"device.ended\""))
                        .forEach(this::note);
            }
        }
    }

    /** How many there are. @param folder before the backup is put in its place */
    static long count(Path folder, Path backup) throws IOException {
        EndedSince record = new EndedSince(folder);
        EndedSince older = new EndedSince(backup);
        return record.ended.stream()
                .filter(device -> older.joined.contains(device) && !older.ended.contains(device))
                .count();
    }

    private void note(String line) {
        try {
            for (JsonNode fact : Json.MAPPER.readTree(line).path("facts")) {
                String device = fact.path("body").path("device").asText();
                switch (fact.path("kind").asText()) {
                    case "device.joined" -> joined.add(device);
                    case "device.ended" -> ended.add(device);
                    default -> {}
                }
            }
        } catch (IOException e) {
            // a line that is no JSON tells of no device
        }
    }
}
