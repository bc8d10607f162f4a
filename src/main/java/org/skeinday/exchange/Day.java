package org.skeinday.exchange;

import java.util.List;
import java.util.Map;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;

/**
 * Everything in a record that files can carry.
 *
 * @param attempts as they stand now
 * @param hows how an official time came about, by attempt id
 * @param readings of each attempt as they came in
 * @param people person id to display name
 */
public record Day(
        List<EventAdded> events,
        List<ModelAdded> models,
        List<BatchAdded> batches,
        List<MotorAdded> motors,
        List<EntryAdded> entries,
        List<EntryModel> entryModels,
        List<WindowAdded> windows,
        List<CrewAdded> crew,
        List<PracticeFlown> flights,
        List<AttemptImported> attempts,
        Map<String, String> hows,
        List<WatchTaken> watches,
        List<ReadingTaken> readings,
        Map<String, String> people) {
    /** An empty record. */
    public static final Day EMPTY = new Day(
            List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
            List.of(), Map.of(), List.of(), List.of(), Map.of());
}
