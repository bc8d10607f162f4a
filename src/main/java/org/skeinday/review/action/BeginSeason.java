package org.skeinday.review.action;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.CrewRemoved;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TypedFields;
import org.skeinday.review.ClearancesKept;
import org.skeinday.review.NewSeason;
import org.skeinday.review.SeasonBegun;
import org.skeinday.review.store.BatchAges;

/** A new season in one act: people who leave, clearances that are earned again, batches that have aged. */
public final class BeginSeason {
    private static final Set<String> TOPICS = Set.of("contest", "motors", "evening");

    /**
     * As typed.
     *
     * @param first its first day
     * @param months from how many a batch has aged
     * @param leaving ids of people
     * @param seen what would change, as the form had said it
     */
    public record Begin(String first, String months, List<String> leaving, List<String> seen) {}

    private BeginSeason() {}

    /** What would change: read now. @throws IllegalArgumentException for months that cannot be */
    public static NewSeason changes(
            Tx tx, LocalDate first, int months, List<String> leaving, Map<String, String> people) {
        List<NewSeason.Person> all = new TreeMap<>(people)
                .entrySet().stream()
                        .map(p -> new NewSeason.Person(p.getKey(), p.getValue(), leaving.contains(p.getKey())))
                        .toList();
        return NewSeason.of(first, all, CrewStore.all(tx), BatchAges.all(tx), months);
    }

    /** @throws IllegalArgumentException saying what would be right */
    public static LocalDate day(String typed) {
        try {
            return LocalDate.parse(typed);
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException("A day must be written as 2027-09-01, but was '" + typed + "'", e);
        }
    }

    /** @throws IllegalArgumentException saying what would be right */
    public static int months(String typed) {
        if (!typed.matches("\\d{1,3}") || Integer.parseInt(typed) < 1 || Integer.parseInt(typed) > 600) {
            throw new IllegalArgumentException("Months must be a whole number from 1 to 600, but were '" + typed + "'");
        }
        return Integer.parseInt(typed);
    }

    static Decision decide(Tx tx, ActContext context, Begin typed, Map<String, String> people) {
        var form = new TypedFields();
        LocalDate first = form.read("first", typed.first(), BeginSeason::day);
        Integer months = form.read("months", typed.months(), BeginSeason::months);
        typed.leaving().stream()
                .filter(id -> !people.containsKey(id))
                .forEach(id -> form.wrong("leaving", "There is no such person any more; look again"));
        Optional<Decision> refused = form.refused();
        if (first == null || months == null || refused.isPresent()) {
            return refused.orElseThrow();
        }
        NewSeason season = changes(tx, first, months, typed.leaving(), people);
        if (!season.words().equals(typed.seen())) {
            return new Decision.Outdated("What would change is not what was shown. Look again, then decide.");
        }
        if (BatchAges.isBegun(tx, first)) {
            return Decision.refused("first", "A season that begins on " + first + " was begun already");
        }
        var kept = new ClearancesKept(
                first, EventStore.all(tx), EntryStore.all(tx), EntryStore.tasks(tx), CrewStore.all(tx));
        List<String> still = kept.stillNeeded(season, people);
        if (!still.isEmpty()) {
            return Decision.refused("leaving", String.join(" ", still));
        }
        return new Decision.Decided(facts(context, first, season, kept), Map.of(), TOPICS);
    }

    private static List<Fact> facts(ActContext context, LocalDate first, NewSeason season, ClearancesKept kept) {
        List<Fact> facts = new ArrayList<>();
        for (CrewAdded line : kept.ofPastEvents(season)) {
            facts.add(Fact.of("crew.added", line));
        }
        for (CrewRemoved line : kept.ended(season)) {
            facts.add(Fact.of("crew.removed", line));
        }
        for (CrewAdded line : season.reset()) {
            facts.add(Fact.of("crew.removed", new CrewRemoved(line.personId(), line.eventId())));
            facts.add(Fact.of("crew.added", line));
        }
        facts.add(Fact.of(
                "season.begun",
                new SeasonBegun(
                        first.toString(),
                        season.aged().stream().map(NewSeason.AgedBatch::id).toList(),
                        context.now().toEpochMilli(),
                        context.personOrNull())));
        return facts;
    }
}
