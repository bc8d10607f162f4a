package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.HandNamed;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Who winds, reads, loads and releases one attempt, called or to be called: it holds until winding begins. */
final class NameHands {
    /**
     * Said for this attempt, whatever the plan and the entry say.
     *
     * @param entry id
     * @param number of the attempt, running
     * @param people ids by task of {@link Assignments#TASKS}; empty for whoever the plan or the entry names
     * @param seen when they were named last as the form showed it; null or empty where it showed nothing
     */
    record Named(
            String entry,
            int number,
            Map<String, String> people,
            @Nullable String seen) {}

    private NameHands() {}

    static Decision decide(Tx tx, ActContext context, Named named) {
        EntryAdded entry =
                EntryStore.find(tx, named.entry()).filter(EntryAdded::own).orElse(null);
        if (entry == null) {
            return Decision.unknown("There is no such entry of ours; look again");
        }
        Optional<AttemptNow> attempt = AttemptStore.ofEvent(tx, entry.eventId()).stream()
                .filter(a -> a.entryId().equals(entry.id()) && a.number().running() == named.number())
                .findFirst();
        AttemptNumber next = AttemptNumbers.next(tx, entry);
        if (attempt.isEmpty() && named.number() != next.running()) {
            return new Decision.Outdated("Next of " + entry.name() + " is " + next.words() + " now. Look again.");
        }
        if (attempt.filter(a -> a.state() != State.CALLED).isPresent()) {
            return Decision.refused(
                    PhaseGate.wrong(tx, context, attempt.get(), "People are named until winding begins"));
        }
        String about = SaidMeanwhile.hands(entry.id(), named.number());
        Optional<Decision> changed = SaidMeanwhile.since(tx, about, named.seen());
        if (changed.isPresent()) {
            return changed.get();
        }
        List<CrewAdded> crew = CrewStore.ofEvent(tx, entry.eventId());
        List<Fact> facts = new ArrayList<>();
        for (String task : Assignments.TASKS) {
            String person = Objects.requireNonNullElse(named.people().get(task), "");
            boolean cleared =
                    person.isEmpty() || crew.stream().anyMatch(c -> c.personId().equals(person) && c.does(task));
            if (!cleared) {
                return Decision.refused(
                        "people",
                        "Choose for \u201c" + task + "\u201d somebody of the list: who is cleared for it in Prepare");
            }
            facts.add(Fact.of("attempt.hand", new HandNamed(entry.id(), named.number(), task, person)));
        }
        facts.add(SaidMeanwhile.told(context, about, "Name them for this attempt"));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }
}
