package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.platform.record.Json;

/** Published instances through the command, as a file like any other. */
class DayPlanPublishedTest {
    private static final Path PUBLISHED = Path.of("src/test/resources/published/dayplan");

    @TempDir
    private Path folder;

    private static List<List<String>> rows(String file) throws IOException {
        return Files.readAllLines(PUBLISHED.resolve(file)).stream()
                .filter(line -> !line.startsWith("#"))
                .map(line -> Stream.of(line.split("\\s+")).toList())
                .toList();
    }

    private static List<Integer> numbers(List<String> cells) {
        return cells.stream()
                .map(cell -> Integer.valueOf(cell.replaceAll("[\\[\\]]", "")))
                .toList();
    }

    private JsonNode solved(ObjectNode problem) throws IOException {
        Path file = Files.writeString(folder.resolve("instance.json"), problem.toString());
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Skeinday.run(
                new String[] {"dayplan", file.toString(), "--json"},
                new PrintWriter(out, true),
                new PrintWriter(err, true));
        assertEquals(0, code, err::toString);
        return Json.MAPPER.readTree(out.toString());
    }

    private static ObjectNode problem() {
        ObjectNode problem = Json.MAPPER.createObjectNode().put("goal", "makespan");
        problem.putArray("tasks");
        problem.putObject("resources");
        problem.putArray("lags");
        return problem;
    }

    @Test
    void the_job_shop_of_fisher_and_thompson_takes_55() throws IOException {
        JsonNode answer = solved(PublishedPlans.of("ft06.txt"));
        assertEquals("optimal", answer.get("status").asText());
        assertEquals(55, answer.get("objective").asInt());
        assertEquals(36, answer.get("starts").size());
    }

    @Test
    void psp1_of_smj10_with_its_maximum_lags_takes_26() throws IOException {
        ObjectNode problem = psp1(rows("psp1.sch"));
        JsonNode answer = solved(problem);
        assertEquals("optimal", answer.get("status").asText());
        assertEquals(26, answer.get("objective").asInt());
        for (JsonNode lag : problem.get("lags")) {
            int apart = answer.get("starts").get(lag.get("to").asText()).asInt()
                    - answer.get("starts").get(lag.get("from").asText()).asInt();
            assertTrue(apart >= lag.get("min").asInt(), lag + " in " + answer);
        }
    }

    private static ObjectNode psp1(List<List<String>> rows) {
        ObjectNode problem = problem();
        int tasks = numbers(rows.get(0)).get(0) + 2;
        List<Integer> capacities = numbers(rows.get(2 * tasks + 1));
        for (int r = 0; r < capacities.size(); r++) {
            ((ObjectNode) problem.get("resources")).put("r" + r, capacities.get(r));
        }
        for (int i = 0; i < tasks; i++) {
            List<Integer> links = new ArrayList<>(numbers(rows.get(1 + i)));
            int count = links.get(2);
            for (int k = 0; k < count; k++) {
                PublishedPlans.lag(problem, "" + links.get(0), "" + links.get(3 + k), links.get(3 + count + k));
            }
            List<Integer> row = numbers(rows.get(1 + tasks + i));
            ObjectNode needs = PublishedPlans.task(problem, "" + row.get(0), row.get(2));
            for (int r = 0; r < capacities.size(); r++) {
                needs.put("r" + r, row.get(3 + r));
            }
        }
        return problem;
    }
}
