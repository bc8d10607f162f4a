package org.skeinday.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.CrewRemoved;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.EventAdded;

/**
 * What a new season leaves of the clearances: events before its first day keep them as they were, since people had their
 * tasks there.
 *
 * @param first day of the season
 */
public record ClearancesKept(
        LocalDate first,
        List<EventAdded> events,
        List<EntryAdded> entries,
        List<EntryTask> tasks,
        List<CrewAdded> crew) {
    /** For a person whose line for all events goes or changes: the old line again, for each past event with a task. */
    public List<CrewAdded> ofPastEvents(NewSeason season) {
        List<CrewAdded> kept = new ArrayList<>();
        for (String person : changed(season)) {
            line(person, "")
                    .ifPresent(old -> withTasks(person).stream()
                            .filter(this::isPast)
                            .filter(event -> line(person, event).isEmpty())
                            .sorted()
                            .forEach(event ->
                                    kept.add(new CrewAdded(person, event, old.roles(), old.cleanWinds(), old.team()))));
        }
        return kept;
    }

    /** Lines of those who leave: for all events, and for events to come. */
    public List<CrewRemoved> ended(NewSeason season) {
        return crew.stream()
                .filter(c -> season.leaving().contains(c.personId()))
                .filter(c -> c.eventId().isEmpty() || !isPast(c.eventId()))
                .map(c -> new CrewRemoved(c.personId(), c.eventId()))
                .toList();
    }

    /** One sentence for each task in an event to come of somebody who would not be cleared for it any more. */
    public List<String> stillNeeded(NewSeason season, Map<String, String> people) {
        return tasks.stream()
                .filter(t -> !isPast(eventOf(t.entryId())) && loses(season, t))
                .map(t -> people.getOrDefault(t.personId(), "Somebody") + " " + t.task() + " for "
                        + entry(t.entryId()).map(EntryAdded::name).orElse("an entry")
                        + " in an event to come: name somebody else there first.")
                .toList();
    }

    private boolean loses(NewSeason season, EntryTask task) {
        String person = task.personId();
        if (season.leaving().contains(person)) {
            return true;
        }
        boolean own = line(person, eventOf(task.entryId()))
                .filter(c -> c.does(task.task()))
                .isPresent();
        return !own && season.reset().stream().anyMatch(c -> c.personId().equals(person) && !c.does(task.task()));
    }

    private Set<String> changed(NewSeason season) {
        Set<String> changed = new HashSet<>(season.leaving());
        season.reset().forEach(c -> changed.add(c.personId()));
        return new java.util.TreeSet<>(changed);
    }

    private Set<String> withTasks(String person) {
        Set<String> events = new HashSet<>();
        tasks.stream().filter(t -> t.personId().equals(person)).forEach(t -> events.add(eventOf(t.entryId())));
        return events;
    }

    private Optional<CrewAdded> line(String person, String event) {
        return crew.stream()
                .filter(c -> c.personId().equals(person) && c.eventId().equals(event))
                .findFirst();
    }

    private Optional<EntryAdded> entry(String id) {
        return entries.stream().filter(e -> e.id().equals(id)).findFirst();
    }

    private String eventOf(String entry) {
        return entry(entry).map(EntryAdded::eventId).orElse("");
    }

    /** One that is not there any more asks nothing of anybody. */
    private boolean isPast(String event) {
        return events.stream()
                .filter(e -> Objects.equals(e.id(), event))
                .map(e -> LocalDate.parse(e.day()).isBefore(first))
                .findFirst()
                .orElse(true);
    }
}
