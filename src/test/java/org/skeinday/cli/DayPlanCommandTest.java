package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.Main;
import org.skeinday.platform.record.Json;

class DayPlanCommandTest {
    /** Two of four steps each on one station, by 10. */
    private static final String TWO_ON_ONE = """
            {"tasks":[{"id":"a","duration":4,"needs":{"station":1},"latestEnd":10},
                      {"id":"b","duration":4,"needs":{"station":1},"earliest":1,"latestEnd":10}],
             "resources":{"station":1},"goal":"slack"}""";

    private static final String THREE_ON_ONE =
            TWO_ON_ONE.replace("[{", "[{\"id\":\"c\",\"duration\":4,\"needs\":{\"station\":1},\"latestEnd\":10},{");

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String text, String... options) throws IOException {
        Path file = Files.writeString(folder.resolve("day.json"), text);
        List<String> args = new ArrayList<>(List.of("dayplan", file.toString()));
        args.addAll(List.of(options));
        return Skeinday.run(args.toArray(String[]::new), new PrintWriter(out, true), new PrintWriter(err, true));
    }

    private JsonNode json(String text) throws IOException {
        out.getBuffer().setLength(0);
        assertEquals(0, run(text, "--json"), err::toString);
        assertEquals(1, out.toString().strip().lines().count(), out.toString());
        return Json.MAPPER.readTree(out.toString());
    }

    @Test
    void the_answer_has_status_objective_starts_conflict_and_seconds() throws IOException {
        JsonNode answer = json(TWO_ON_ONE);
        List<String> names = new ArrayList<>();
        answer.fieldNames().forEachRemaining(names::add);
        assertEquals(List.of("status", "objective", "starts", "conflict", "irreducible", "seconds"), names);
        assertEquals("optimal", answer.get("status").asText());
        assertEquals(2, answer.get("objective").asInt());
        assertEquals(0, answer.get("starts").get("a").asInt());
        assertEquals(4, answer.get("starts").get("b").asInt());
        assertEquals(0, answer.get("conflict").size());
        assertTrue(answer.get("irreducible").isNull(), "nothing conflicts");
        assertTrue(answer.get("seconds").isNumber() && answer.get("seconds").asDouble() >= 0);
    }

    @Test
    void without_a_plan_the_conflict_names_tasks_lags_and_resources() throws IOException {
        JsonNode answer = json(THREE_ON_ONE);
        assertEquals("infeasible", answer.get("status").asText());
        assertTrue(answer.get("objective").isNull());
        assertEquals(0, answer.get("starts").size());
        assertEquals("[\"c\",\"a\",\"b\",\"station\"]", answer.get("conflict").toString());
        assertTrue(answer.get("irreducible").isBoolean()
                && answer.get("irreducible").asBoolean());
        String late = """
                {"tasks":[{"id":"wind","duration":4},{"id":"fly","duration":1,"latestEnd":4},{"id":"x","duration":1}],
                 "lags":[{"from":"wind","to":"fly","min":4,"max":6},{"from":"wind","to":"x","min":4}]}""";
        assertEquals(
                "[\"wind\",\"fly\",\"wind->fly\"]", json(late).get("conflict").toString());
    }

    @Test
    void all_but_id_and_duration_may_be_left_out() throws IOException {
        assertEquals(
                3,
                json("{\"tasks\":[{\"id\":\"a\",\"duration\":3}]}")
                        .get("objective")
                        .asInt());
        assertEquals(0, json("{}").get("objective").asInt());
        JsonNode open = json("{\"tasks\":[{\"id\":\"a\",\"duration\":3,\"fixedStart\":-2}],\"goal\":\"slack\"}");
        assertTrue(open.get("objective").isNull(), "no window, no time in hand");
        assertEquals(-2, open.get("starts").get("a").asInt());
    }

    @Test
    void people_read_when_what_waits_and_the_ways_out() throws IOException {
        assertEquals(0, run(TWO_ON_ONE), err::toString);
        assertTrue(out.toString().contains("4  b, at the latest 6"), out.toString());
        assertTrue(out.toString().contains("b waits for station, held by a"), out.toString());
        assertEquals(0, run(THREE_ON_ONE), err::toString);
        assertTrue(out.toString().contains("cannot be kept together; each of them is needed"), out.toString());
        assertTrue(out.toString().contains("- of station there is 1"), out.toString());
        assertTrue(out.toString().contains("- let b end up to 2 later"), out.toString());
        assertTrue(out.toString().contains("- leave out c"), out.toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"tasks\":[{\"id\":\"a\",\"duration\":-1}]} | day.json tasks[0].duration: must be a whole number",
                "{\"tasks\":[{\"id\":\"a\",\"duration\":1.5}]} | tasks[0].duration: must be a whole number",
                "{\"tasks\":[{\"id\":\"a\"}]} | tasks[0].duration: must be a whole number from 0 to 1000000000, but it is missing",
                "{\"tasks\":[{\"duration\":1}]} | tasks[0].id: must be a name in quotes, but it is missing",
                "{\"tasks\":[{\"id\":\"a\",\"duration\":1},{\"id\":\"a\",\"duration\":1}]} | tasks[1].id: must be a name of its own",
                "{\"tasks\":[{\"id\":\"a\",\"duration\":1,\"needs\":{\"x\":1}}]} | tasks[0].needs.x: must name one of the resources",
                "{\"tasks\":[{\"id\":\"a\",\"duration\":1,\"lasts\":1}]} | tasks[0].lasts: is not known here",
                "{\"tasks\":[{\"id\":\"a\",\"duration\":1}],\"lags\":[{\"from\":\"a\",\"to\":\"b\"}]} | lags[0].to: must name one of the tasks, but there is no 'b'",
                "{\"tasks\":[{\"id\":\"a\",\"duration\":1}],\"lags\":[{\"from\":\"a\",\"to\":\"a\"}]} | lags[0].to: must be another task",
                "{\"resources\":{\"x\":\"one\"}} | resources.x: must be a whole number from 0 to 1000000, but was \"one\"",
                "{\"tasks\":{}} | tasks: must be a list in brackets",
                "{\"goal\":\"fun\"} | goal: must be \"makespan\" or \"slack\", but was \"fun\"",
                "[] | day.json: must be an object in braces, but was []",
                "{\"tasks\":[} | day.json line 1 column",
                "{\"goal\":\"slack\",\"goal\":\"slack\"} | day.json line 1 column",
                "{} {} | day.json line 1 column",
                "`` | day.json: must be"
            })
    void a_bad_file_exits_2_and_names_the_place(String text, String message) throws IOException {
        assertEquals(2, run(text == null ? "" : text, "--json"));
        assertTrue(err.toString().contains(message), err.toString());
        assertEquals(1, err.toString().strip().lines().count(), err.toString());
        assertEquals("", out.toString());
    }

    @Test
    void a_missing_file_exits_2() {
        int code = Skeinday.run(
                new String[] {"dayplan", folder.resolve("none.json").toString(), "--json"},
                new PrintWriter(out, true),
                new PrintWriter(err, true));
        assertEquals(2, code);
        assertTrue(err.toString().contains("There is no file"), err.toString());
    }

    @Test
    void where_the_native_cannot_load_it_says_so_and_that_planning_by_hand_goes_on() throws Exception {
        Path file = Files.writeString(folder.resolve("day.json"), TWO_ON_ONE);
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "-Djava.io.tmpdir=" + folder.resolve("not there"),
                        Main.class.getName(),
                        "dayplan",
                        file.toString(),
                        "--json")
                .redirectErrorStream(true)
                .start();
        String said;
        try (InputStream from = child.getInputStream()) {
            said = new String(from.readAllBytes(), StandardCharsets.UTF_8);
        }
        assertEquals(1, child.waitFor(), said);
        assertTrue(said.startsWith("No day plan can be computed on this laptop"), said);
        assertTrue(said.contains("Plan by hand"), said);
    }
}
