package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.exchange.DayFiles;
import org.skeinday.platform.record.Json;

/** Files of a program of before its classes and their words were renamed are taken in as they were. */
class EarlierFilesTest {
    private static final Path BUNDLE = Path.of("src/test/resources/earlier/bundle.json");

    /** What files of before do not say: where a flight and its numbers came from, whether somebody decided of it, which use it was. */
    private static final Set<String> MADE_SINCE = Set.of("source", "numbers", "confirmed by", "counts", "use");

    @TempDir
    Path root;

    @Test
    void a_bundle_of_an_earlier_program_comes_out_as_it_came_in() throws Exception {
        Map<String, String> texts = OneFile.read(BUNDLE);
        Exchange.Taken taken =
                Exchange.take(root.resolve("day"), texts, 0, Clock.systemDefaultZone(), new SecureRandom());
        assertEquals(List.of(), taken.errors());
        DayFiles.Written out = Exchange.write(root.resolve("day"), new TakenOut.Choice(), Clock.systemDefaultZone());
        Path again = root.resolve("bundle.json");
        OneFile.write(again, "the whole record", out.texts());
        assertEquals(withoutBeforeWinding(BUNDLE), withoutBeforeWinding(again));
        for (String table : List.of("flights", "attempts")) {
            Json.MAPPER
                    .readTree(again.toFile())
                    .path("tables")
                    .path(table)
                    .forEach(row -> assertEquals(
                            row.path("from paper").asText().equals("yes") ? "card" : "typed",
                            row.path("source").asText(),
                            "what a file of before has is typed: " + row));
        }
        assertTrue(before(BUNDLE).get(0).path("revision").asInt() == 1, "as the program brought it then");
        assertEquals(
                Set.of(2),
                before(again).stream().map(row -> row.path("revision").asInt()).collect(Collectors.toSet()),
                "as it brings it now");
    }

    /** The one list that nobody had worded and that the program words anew since then. */
    private static List<JsonNode> before(Path bundle) throws IOException {
        return StreamSupport.stream(
                        Json.MAPPER
                                .readTree(bundle.toFile())
                                .path("tables")
                                .path("checklists")
                                .spliterator(),
                        false)
                .filter(row -> row.path("list").asText().equals("before-winding"))
                .toList();
    }

    private static String withoutBeforeWinding(Path bundle) throws IOException {
        JsonNode all = Json.MAPPER.readTree(bundle.toFile());
        Iterator<JsonNode> rows = all.path("tables").path("checklists").iterator();
        while (rows.hasNext()) {
            if (rows.next().path("list").asText().equals("before-winding")) {
                rows.remove();
            }
        }
        for (String table : List.of("flights", "attempts")) {
            all.path("tables").path(table).forEach(row -> ((ObjectNode) row).remove(MADE_SINCE));
        }
        return all.toPrettyString();
    }
}
