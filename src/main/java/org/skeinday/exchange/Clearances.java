package org.skeinday.exchange;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.skeinday.contest.EntryTask;

/** What each person may do: nobody is put on a task without clearance, nor loses it while on that task. */
final class Clearances {
    private final Map<String, List<String>> tasks = new HashMap<>();
    private final Map<String, String> entries = new HashMap<>();
    private final Map<String, String> eventOf = new HashMap<>();
    private final Map<String, List<EntryTask>> assigned;

    Clearances(Day there) {
        there.crew().forEach(c -> tasks.put(ImportContext.key(c.personId(), c.eventId()), words(c.roles())));
        there.entries().forEach(e -> {
            entries.put(e.id(), e.name());
            eventOf.put(e.id(), e.eventId());
        });
        assigned = there.more().entryTasks().stream().collect(Collectors.groupingBy(EntryTask::personId));
    }

    private static List<String> words(String roles) {
        return roles.isEmpty() ? List.of() : List.of(roles.split(",", -1));
    }

    /** In this event or in all. */
    boolean has(String person, String event, String task) {
        return tasks.getOrDefault(ImportContext.key(person, event), List.of()).contains(task)
                || tasks.getOrDefault(ImportContext.key(person, ""), List.of()).contains(task);
    }

    /** Takes a line of the crew in, and notes when somebody loses a task that is theirs for an entry. */
    void of(String person, String event, String roles, Row row) {
        tasks.put(ImportContext.key(person, event), words(roles));
        for (EntryTask one : assigned.getOrDefault(person, List.of())) {
            String at = eventOf.getOrDefault(one.entryId(), "");
            if (!has(person, at, one.task())) {
                row.error(
                        "tasks",
                        row.text("name") + " " + one.task() + " for " + entries.getOrDefault(one.entryId(), "an entry"),
                        "keep '" + one.task() + "' here, or name somebody else in that entry first");
            }
        }
    }
}
