package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.platform.record.Json;

/** {@code dayplan --limit}; published instances, {@code -Dskeinday.limit} seconds each: 60 in profile bench. */
class DayPlanLimitTest {
    private static final String LIMIT = System.getProperty("skeinday.limit", "2");

    private static final String DAY = """
            {"tasks":[{"id":"a","duration":4,"needs":{"station":1},"latestEnd":10},
                      {"id":"b","duration":4,"needs":{"station":1},"latestEnd":10}],
             "resources":{"station":1}}""";

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String text, String... options) throws IOException {
        Path file = Files.writeString(folder.resolve("day.json"), text);
        String[] args = new String[2 + options.length];
        args[0] = "dayplan";
        args[1] = file.toString();
        System.arraycopy(options, 0, args, 2, options.length);
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return Skeinday.run(args, new PrintWriter(out, true), new PrintWriter(err, true));
    }

    private JsonNode json(String text, String limit) throws IOException {
        assertEquals(0, run(text, "--limit", limit, "--json"), err::toString);
        return Json.MAPPER.readTree(out.toString());
    }

    @ParameterizedTest
    @CsvSource({"ft10.txt,930", "j3013_2.txt,62", "j3045_2.txt,125"})
    void a_published_instance_is_proven_or_answered_with_bound_and_gap_around_its_optimum(String file, int optimum)
            throws IOException {
        JsonNode answer = json(PublishedPlans.of(file).toString(), LIMIT);
        System.out.println(file + ", " + LIMIT + " s: " + answer.get("status") + " makespan " + answer.get("makespan")
                + " bound " + answer.get("bound") + " gap " + answer.get("gap"));
        int makespan = answer.get("makespan").asInt();
        int bound = answer.get("bound").asInt();
        assertTrue(bound <= optimum && optimum <= makespan, answer.toString());
        assertEquals(
                makespan == bound ? "optimal" : "feasible", answer.get("status").asText());
        assertEquals((makespan - bound) / (double) makespan, answer.get("gap").asDouble(), 1e-12);
        assertEquals(makespan, answer.get("objective").asInt());
        List<String> lines = err.toString().lines().toList();
        for (String line : lines) {
            assertTrue(line.matches("\\d+ s: (no plan yet|a plan that ends at \\d+), none ends before \\d+"), line);
        }
    }

    @Test
    void a_search_that_takes_seconds_says_how_far_it_is() throws IOException {
        JsonNode answer = json(PublishedPlans.of("j3013_2.txt").toString(), "3");
        if (answer.get("seconds").asDouble() > 2) { // a machine that proves it sooner has less to say
            assertTrue(err.toString().lines().count() >= 1, err.toString());
        }
        assertTrue(out.toString().lines().count() == 1, out.toString());
    }

    @Test
    void a_limit_too_short_for_any_plan_says_that_none_was_found_and_what_none_can_beat() throws IOException {
        JsonNode answer = json(PublishedPlans.of("ft10.txt").toString(), "0.001");
        boolean found = answer.get("status").asText().equals("feasible");
        assertEquals(found, answer.get("makespan").isNumber(), answer.toString());
        assertEquals(found, answer.get("gap").isNumber(), answer.toString());
        assertTrue(found || answer.get("status").asText().equals("unknown"), answer.toString());
        assertTrue(answer.get("bound").asInt() >= 655, answer.toString()); // the longest job
    }

    @Test
    void what_is_proven_within_the_limit_is_answered_as_without_it() throws IOException {
        JsonNode answer = json(DAY, "30");
        assertEquals("optimal", answer.get("status").asText());
        for (String key : List.of("objective", "makespan", "bound")) {
            assertEquals(8, answer.get(key).asInt(), key);
        }
        assertEquals(0, answer.get("gap").asDouble());
        JsonNode slack = json(DAY.replace("\"resources\"", "\"goal\":\"slack\",\"resources\""), "30");
        assertEquals(2, slack.get("objective").asInt());
        assertEquals(2, slack.get("bound").asInt());
        assertEquals(8, slack.get("makespan").asInt());
        assertEquals(0, slack.get("gap").asDouble());
    }

    @Test
    void without_a_plan_the_conflict_is_named_and_there_is_no_bound() throws IOException {
        JsonNode answer = json(DAY.replace("10", "7"), "30");
        assertEquals("infeasible", answer.get("status").asText());
        assertTrue(answer.get("bound").isNull() && answer.get("gap").isNull(), answer.toString());
        assertEquals("[\"a\",\"b\",\"station\"]", answer.get("conflict").toString());
        assertEquals(0, run(DAY.replace("10", "7"), "--limit", "30"));
        assertTrue(out.toString().contains("any of these would do"), out.toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0|--limit must be above 0 and at most 86400 seconds, but was 0.0",
                "-3|--limit must be above 0",
                "NaN|--limit must be above 0",
                "86401|--limit must be above 0 and at most 86400 seconds",
                "soon|--limit: 'soon' is not a number"
            })
    void a_limit_that_is_none_is_one_clear_line_and_exit_2(String limit, String said) throws IOException {
        assertEquals(2, run(DAY, "--limit", limit));
        assertTrue(err.toString().contains(said), err.toString());
        assertEquals(1, err.toString().strip().lines().count(), err.toString());
    }
}
