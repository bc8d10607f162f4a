package org.skeinday.review;

import java.time.LocalDate;
import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.CrewAdded;
import org.skeinday.units.Preconditions;

/**
 * What a new season changes, for the coach to look at before it is done: who leaves, whose clearances are earned again,
 * which batches have aged. Nothing is deleted: past seasons keep what they have.
 *
 * @param leaving ids of the people who are no longer of the team
 * @param reset clearances as they will stand
 * @param aged batches whose break tests are too old to be relied on
 * @param words one sentence for each change, in that order
 */
public record NewSeason(List<String> leaving, List<CrewAdded> reset, List<AgedBatch> aged, List<String> words) {
    /** From this age on a batch is to be broken again before its K and ceiling are used (own default; editable). */
    public static final int DEFAULT_MONTHS = 12;

    /** Who handles a wound motor earns it again (own default): this is taken out, and clean winds count from none. */
    private static final String LOADS = "loads";

    /** @param graduates whether the coach said that this is the last season */
    public record Person(String id, String name, boolean graduates) {}

    /** @param lastTested day of the last break test, null when there was none */
    public record Batch(
            String id,
            String name,
            @Nullable LocalDate opened,
            @Nullable LocalDate lastTested) {}

    public record AgedBatch(String id, String name, int months) {}

    /**
     * @param crew clearances of all events; those of a person who leaves are not reset
     * @param months from how many a batch has aged, 1 or more
     */
    public static NewSeason of(
            LocalDate first, List<Person> people, List<CrewAdded> crew, List<Batch> batches, int months) {
        Preconditions.withinIfKnown("The months of age", months, 1, 600);
        List<Person> leave = people.stream().filter(Person::graduates).toList();
        List<String> leaving = leave.stream().map(Person::id).toList();
        List<CrewAdded> before = crew.stream()
                .filter(c -> c.eventId().isEmpty() && !leaving.contains(c.personId()))
                .filter(c -> !fresh(c).equals(c))
                .toList();
        List<AgedBatch> aged = batches.stream()
                .flatMap(b -> age(b, first).stream())
                .filter(b -> b.months() >= months)
                .toList();
        List<String> words = new ArrayList<>();
        leave.forEach(p -> words.add(p.name() + " leaves the team; past flights keep the name."));
        before.forEach(c -> words.add(name(people, c.personId()) + " " + lost(c) + "."));
        aged.forEach(
                b -> words.add(
                        "Batch " + b.name() + " is " + b.months()
                                + " months past its opening or last break test: break two or three motors before its K and ceiling are used."));
        return new NewSeason(leaving, before.stream().map(NewSeason::fresh).toList(), aged, List.copyOf(words));
    }

    /** The same without what is earned again. */
    private static CrewAdded fresh(CrewAdded c) {
        List<String> roles = CrewAdded.ROLES.stream()
                .filter(role -> c.does(role) && !role.equals(LOADS))
                .toList();
        return new CrewAdded(
                c.personId(),
                c.eventId(),
                String.join(",", roles),
                c.does("winds") ? (Integer) 0 : c.cleanWinds(),
                c.team());
    }

    private static String lost(CrewAdded c) {
        List<String> parts = new ArrayList<>();
        Integer winds = c.cleanWinds();
        if (c.does("winds") && (winds == null || winds != 0)) {
            parts.add("winds with somebody beside again, clean winds count from none");
        }
        if (c.does(LOADS)) {
            parts.add("is cleared anew before loading a wound motor");
        }
        return String.join(", and ", parts);
    }

    private static String name(List<Person> people, String id) {
        return people.stream()
                .filter(p -> p.id().equals(id))
                .findFirst()
                .map(Person::name)
                .orElse("One whose name is not known");
    }

    /** Since its last break test, else since it was opened; empty where neither day is known. */
    private static java.util.Optional<AgedBatch> age(Batch b, LocalDate first) {
        LocalDate since = b.lastTested() == null ? b.opened() : b.lastTested();
        return since == null
                ? java.util.Optional.empty()
                : java.util.Optional.of(new AgedBatch(
                        b.id(), b.name(), (int) Period.between(since, first).toTotalMonths()));
    }
}
