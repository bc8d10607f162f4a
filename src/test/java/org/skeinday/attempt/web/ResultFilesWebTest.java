package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;

/** What a spectator takes along is enough to count the result again. */
@Timeout(60)
class ResultFilesWebTest {
    private static final int ENTRIES = 29;

    @TempDir
    static Path root;

    private static App app;
    private static Visitor laptop;
    private static Visitor spectator;

    @BeforeAll
    static void start() throws Exception {
        app = Demo.startEmpty(HostedDay.into(root.resolve("day"), ENTRIES, 4, 20_260_509), Clock.systemDefaultZone());
        laptop = new Visitor(app.port(), "", 1);
        spectator = Demo.joined(app, "viewer", "", 2);
    }

    @AfterAll
    static void stop() throws Exception {
        app.close();
    }

    private static List<JsonNode> list(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).toList();
    }

    private static JsonNode results(String query) throws Exception {
        return Json.MAPPER.readTree(spectator.get("/results.json" + query).body());
    }

    /** The sum of the best two official flights, longest first; ties by the next best single time. */
    @Test
    void anybody_can_count_it_again_from_what_counts() throws Exception {
        List<JsonNode> entries = list(results("").path("entries"));
        assertEquals(ENTRIES, entries.size());
        List<List<Long>> official = new ArrayList<>();
        for (JsonNode entry : entries) {
            List<Long> times = list(entry.path("tries")).stream()
                    .filter(t -> t.path("counts").asText().equals("official flight"))
                    .map(t -> t.path("time ms").asLong())
                    .sorted(Comparator.reverseOrder())
                    .toList();
            long sum = times.stream().limit(2).mapToLong(Long::longValue).sum();
            long inScore = list(entry.path("tries")).stream()
                    .filter(t -> t.path("in score").asText().equals("yes"))
                    .mapToLong(t -> t.path("time ms").asLong())
                    .sum();
            assertEquals(sum, inScore, "what the score is made of: " + entry);
            assertEquals(times.isEmpty(), entry.path("score ms").isMissingNode(), entry.toString());
            assertEquals(sum, entry.path("score ms").asLong(), entry.toString());
            official.add(LongStream.concat(LongStream.of(sum), times.stream().mapToLong(Long::longValue))
                    .boxed()
                    .toList());
        }
        for (int i = 0; i < ENTRIES; i++) {
            List<Long> own = official.get(i);
            long better =
                    official.stream().filter(other -> isBetter(other, own)).count();
            assertEquals(
                    own.size() == 1 ? 0 : better + 1,
                    entries.get(i).path("place").asLong(),
                    entries.get(i).toString());
        }
    }

    private static boolean isBetter(List<Long> other, List<Long> own) {
        for (int i = 0; i < Math.min(other.size(), own.size()); i++) {
            if (!other.get(i).equals(own.get(i))) {
                return other.get(i) > own.get(i);
            }
        }
        return other.size() > own.size();
    }

    @Test
    void every_try_says_what_counts_and_why() throws Exception {
        String csv = spectator.get("/results.csv").body();
        assertTrue(
                csv.startsWith(
                        "place,entry,team,division,score,score ms,attempt,try,state,time,time ms,counts,why,in score,provisional,result,version"),
                csv);
        for (String words : List.of(
                ",official flight,",
                ",may be repeated,",
                ",flown again,",
                ",used up without a time,",
                "void: touched by a person")) {
            assertTrue(csv.contains(words), words + " in " + csv);
        }
        list(results("").path("entries"))
                .forEach(entry -> list(entry.path("tries"))
                        .forEach(t -> assertEquals(
                                t.path("state").asText().equals("next"),
                                t.path("why").isMissingNode(),
                                t.toString())));
    }

    @Test
    void a_division_has_places_of_its_own_on_the_sheet_and_in_what_is_taken_along() throws Exception {
        List<JsonNode> juniors = list(results("?division=juniors").path("entries"));
        assertEquals((ENTRIES + 2) / 3, juniors.size());
        assertEquals(1, juniors.get(0).path("place").asInt());
        assertTrue(juniors.stream().allMatch(e -> e.path("division").asText().equals("juniors")));
        String leader = juniors.get(0).path("entry").asText();
        String sheet = spectator.get("/results?division=juniors").body();
        assertTrue(sheet.contains("<h1>" + leader + " leads"), sheet);
        assertTrue(
                sheet.contains("data-refetch=\"/results/part?division=juniors\""), "it is asked for again as it was");
        assertFalse(
                spectator.get("/results/part?division=juniors").body().contains(">Plover<"), "an entry of the others");
        assertTrue(laptop.get("/results").body().contains("href=\"/results?division=open\""));
    }

    @Test
    void a_division_that_nobody_is_of_is_an_empty_sheet() throws Exception {
        assertEquals(200, spectator.get("/results?division=%3Cb%3E").statusCode());
        assertFalse(spectator.get("/results?division=%3Cb%3E").body().contains("<b>leads"));
    }
}
