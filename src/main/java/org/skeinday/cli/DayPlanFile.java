package org.skeinday.cli;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.skeinday.dayplan.Goal;
import org.skeinday.dayplan.Lag;
import org.skeinday.dayplan.PlanProblem;
import org.skeinday.dayplan.Resource;
import org.skeinday.dayplan.Task;
import org.skeinday.platform.record.Json;

/** A problem out of a file of {@code dayplan}; what is wrong is said with its place. */
record DayPlanFile(PlanProblem problem, Goal goal) {
    private static final ObjectReader STRICT = Json.MAPPER
            .reader()
            .with(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
            .with(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    /** @throws IllegalArgumentException with the place in the file */
    static DayPlanFile read(String name, String text) {
        try {
            return of(new JsonPlace(STRICT.readTree(text), name, ""));
        } catch (JsonProcessingException e) {
            var at = e.getLocation();
            String place = at == null ? name : name + " line " + at.getLineNr() + " column " + at.getColumnNr();
            throw new IllegalArgumentException(place + ": must be JSON, but " + e.getOriginalMessage());
        }
    }

    private static DayPlanFile of(JsonPlace file) {
        file.object("tasks", "resources", "lags", "goal");
        List<Resource> resources = new ArrayList<>();
        file.at("resources").members().forEach((id, capacity) -> {
            if (id.isBlank()) {
                throw capacity.wrong("must have a name, but it was blank");
            }
            resources.add(new Resource(id, capacity.whole(0, 1_000_000)));
        });
        List<Task> tasks = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (JsonPlace one : file.at("tasks").elements()) {
            Task task = task(one, resources);
            if (!ids.add(task.id())) {
                throw one.at("id").wrong("must be a name of its own, but another task is called '" + task.id() + "'");
            }
            tasks.add(task);
        }
        return new DayPlanFile(PlanProblem.of(tasks, resources, lags(file.at("lags"), ids)), goal(file.at("goal")));
    }

    private static Task task(JsonPlace one, List<Resource> resources) {
        one.object("id", "duration", "needs", "earliest", "latestEnd", "fixedStart");
        String id = one.at("id").text();
        Task task = Task.of(id, one.at("duration").whole(0, JsonPlace.LARGEST))
                .within(one.at("earliest").maybeTime(), one.at("latestEnd").maybeTime())
                .fixedAt(one.at("fixedStart").maybeTime());
        for (var need : one.at("needs").members().entrySet()) {
            if (resources.stream().noneMatch(resource -> resource.id().equals(need.getKey()))) {
                throw need.getValue().wrong("must name one of the resources, but there is no '" + need.getKey() + "'");
            }
            int amount = (int) need.getValue().whole(0, 1_000_000);
            task = amount == 0 ? task : task.needing(need.getKey(), amount);
        }
        return task;
    }

    /** Named by their ends, {@code a->b}; a second one between the same ends {@code a->b#2}. */
    private static List<Lag> lags(JsonPlace file, Set<String> ids) {
        List<Lag> lags = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (JsonPlace one : file.elements()) {
            one.object("from", "to", "min", "max");
            String from = end(one.at("from"), ids);
            String to = end(one.at("to"), ids);
            if (from.equals(to)) {
                throw one.at("to").wrong("must be another task than from, but was '" + to + "'");
            }
            String name = from + "->" + to;
            for (int n = 2; !names.add(name); n++) {
                name = from + "->" + to + "#" + n;
            }
            lags.add(new Lag(
                    name, from, to, one.at("min").maybeTime(), one.at("max").maybeTime(), 0));
        }
        return lags;
    }

    private static String end(JsonPlace place, Set<String> ids) {
        String id = place.text();
        if (!ids.contains(id)) {
            throw place.wrong("must name one of the tasks, but there is no '" + id + "'");
        }
        return id;
    }

    private static Goal goal(JsonPlace place) {
        if (place.isAbsent()) {
            return Goal.MAKESPAN;
        }
        JsonNode node = place.node();
        return switch (node.isTextual() ? node.asText() : "") {
            case "makespan" -> Goal.MAKESPAN;
            case "slack" -> Goal.SLACK;
            default -> throw place.wrong("must be \"makespan\" or \"slack\", but was " + node);
        };
    }
}
