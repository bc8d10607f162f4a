package org.skeinday.attempt.action;

import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Decision;

/** On a hosted day nobody times their own team's entry, unless the chief allows it with a reason. */
final class OwnEntry {
    private OwnEntry() {}

    /** Empty where this person may, or where the chief allows it. */
    static Optional<Decision> refused(Tx tx, String person, AttemptNow attempt, TakeWatch.TakePlace place) {
        EventAdded event = EventStore.find(tx, attempt.eventId()).orElseThrow();
        EntryAdded entry = EntryStore.find(tx, attempt.entryId()).orElseThrow();
        if (!is(tx, person, event, entry)) {
            return Optional.empty();
        }
        if (!Boolean.TRUE.equals(place.pin())) {
            return Optional.of(
                    Decision.refused(
                            "own",
                            entry.name() + " is of " + entry.team()
                                    + ", and so is whoever uses this device: on a hosted day"
                                    + " nobody times their own team. Another timekeeper takes this watch, or the chief allows it."));
        }
        return AttemptActions.wrongWords(
                "own", place.allowed() == null ? "" : place.allowed().strip(), AttemptActions.SAY_WHY);
    }

    /** Whether this person is of the entry's team, as the crew says it; where nobody says it, nobody is. */
    static boolean is(Tx tx, String person, EventAdded event, EntryAdded entry) {
        return event.dayKind() == DayKind.HOSTING
                && !person.isEmpty()
                && !entry.team().isBlank()
                && CrewStore.ofEvent(tx, event.id()).stream()
                        .filter(crew -> crew.personId().equals(person))
                        .map(CrewAdded::team)
                        .anyMatch(team -> team != null
                                && team.strip().equalsIgnoreCase(entry.team().strip()));
    }
}
