package org.skeinday.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.skeinday.platform.record.Json;

/** Published job shops ({@code ft…}) and projects of PSPLIB ({@code j30…}) as files of {@code dayplan}. */
final class PublishedPlans {
    private static final Path PUBLISHED = Path.of("src/test/resources/published/dayplan");

    private PublishedPlans() {}

    static ObjectNode of(String file) throws IOException {
        List<List<Integer>> rows = Files.readAllLines(PUBLISHED.resolve(file)).stream()
                .filter(line -> !line.startsWith("#"))
                .map(line -> Stream.of(line.split("\\s+")).map(Integer::valueOf).toList())
                .toList();
        ObjectNode problem = Json.MAPPER.createObjectNode().put("goal", "makespan");
        problem.putArray("tasks");
        problem.putObject("resources");
        problem.putArray("lags");
        return file.startsWith("ft") ? jobShop(problem, rows) : project(problem, rows);
    }

    /** Each row is a job: machine and duration of one part after the other. */
    private static ObjectNode jobShop(ObjectNode problem, List<List<Integer>> rows) {
        ObjectNode machines = (ObjectNode) problem.get("resources");
        for (int job = 0; job < rows.size(); job++) {
            List<Integer> cells = rows.get(job);
            for (int i = 0; i < cells.size(); i += 2) {
                task(problem, job + "-" + i, cells.get(i + 1)).put("m" + cells.get(i), 1);
                machines.put("m" + cells.get(i), 1);
                if (i > 0) {
                    lag(problem, job + "-" + (i - 2), job + "-" + i, cells.get(i - 1));
                }
            }
        }
        return problem;
    }

    /** Capacities of four resources; then of each task its number, duration, four needs and what follows it. */
    private static ObjectNode project(ObjectNode problem, List<List<Integer>> rows) {
        ObjectNode resources = (ObjectNode) problem.get("resources");
        for (int r = 0; r < 4; r++) {
            resources.put("r" + r, rows.get(0).get(r));
        }
        for (List<Integer> row : rows.subList(1, rows.size())) {
            ObjectNode needs = task(problem, "" + row.get(0), row.get(1));
            for (int r = 0; r < 4; r++) {
                needs.put("r" + r, row.get(2 + r));
            }
            row.subList(6, row.size()).forEach(next -> lag(problem, "" + row.get(0), "" + next, row.get(1)));
        }
        return problem;
    }

    static void lag(ObjectNode problem, String from, String to, int min) {
        problem.withArray("lags").addObject().put("from", from).put("to", to).put("min", min);
    }

    static ObjectNode task(ObjectNode problem, String id, int duration) {
        return problem.withArray("tasks")
                .addObject()
                .put("id", id)
                .put("duration", duration)
                .putObject("needs");
    }
}
