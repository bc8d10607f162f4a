package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_HAND;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_HAND_KEPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_PLANNED;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.Record3;
import org.jooq.Result;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Assigned;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.HandKept;
import org.skeinday.attempt.HandNamed;
import org.skeinday.attempt.State;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AttemptPlannedRecord;
import org.skeinday.platform.record.FactKind;

/**
 * Who does what of an attempt, and with which motor the plan of the day has it: from the first crank turn on as it was then,
 * before it as said by hand for this attempt, else by the plan in force, else for the entry. The one place for it, from which
 * every page reads.
 */
public final class Assignments {
    /** Tasks of an attempt that a person is named for; who times is told by the watches. */
    public static final List<String> TASKS = List.of("winds", "reads", "loads", "releases");

    /** Those among them whose hands are on the motor. */
    private static final List<String> HANDS = List.of("winds", "loads", "releases");

    private Assignments() {}

    /**
     * What a plan says of one attempt.
     *
     * @param name of the attempt in the plan: entry and number
     * @param motor its tag
     * @param winds id of a person
     * @param loads id of a person
     * @param windMs when winding is to begin, ms since 1970 UTC
     */
    public record Planned(
            String name,
            @Nullable String motor,
            @Nullable String winds,
            @Nullable String loads,
            @Nullable Long windMs) {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("attempt.hand", HandNamed.class, Assignments::named),
                FactKind.of("attempt.hand-kept", HandKept.class, Rows.put(ATTEMPT_HAND_KEPT)));
    }

    private static void named(Tx tx, HandNamed fact) {
        tx.sql()
                .deleteFrom(ATTEMPT_HAND)
                .where(ATTEMPT_HAND.ENTRY_ID.eq(fact.entryId()))
                .and(ATTEMPT_HAND.NUMBER.eq(fact.number()))
                .and(ATTEMPT_HAND.TASK.eq(fact.task()))
                .execute();
        Rows.into(ATTEMPT_HAND).accept(tx, fact); // nobody as well: then the hand of the try before does not hold
    }

    /** From now on this plan of an event is in force, in place of any before. */
    public static void plan(Tx tx, String event, List<Planned> attempts) {
        Rows.remove(tx, ATTEMPT_PLANNED.EVENT_ID, event);
        for (Planned one : attempts) {
            tx.sql()
                    .insertInto(
                            ATTEMPT_PLANNED,
                            ATTEMPT_PLANNED.EVENT_ID,
                            ATTEMPT_PLANNED.NAME,
                            ATTEMPT_PLANNED.MOTOR,
                            ATTEMPT_PLANNED.WINDS,
                            ATTEMPT_PLANNED.LOADS,
                            ATTEMPT_PLANNED.WIND_MS)
                    .values(event, one.name(), one.motor(), one.winds(), one.loads(), one.windMs())
                    .execute();
        }
    }

    /** By task, in the order of {@link #TASKS}. @param number of the attempt, called or to be called */
    public static Map<String, Assigned> of(Tx tx, EntryAdded entry, AttemptNumber number) {
        List<CrewAdded> crew = CrewStore.ofEvent(tx, entry.eventId());
        Said said = Said.read(tx, entry, number);
        Map<String, Assigned> all = new LinkedHashMap<>();
        for (String task : TASKS) {
            all.put(task, said.of(task).orElseGet(() -> cleared(crew, task)));
        }
        return all;
    }

    /** Who is named for a task; empty where nobody is. */
    public static Optional<Assigned> named(Tx tx, EntryAdded entry, AttemptNumber number, String task) {
        return Said.read(tx, entry, number).of(task);
    }

    /**
     * What this person is named for that keeps their hands at the motor; empty for nothing. Whoever is cleared among others is
     * not named.
     */
    public static Optional<String> taskOfHands(Tx tx, EntryAdded entry, AttemptNumber number, String person) {
        Said said = Said.read(tx, entry, number);
        return HANDS.stream()
                .filter(task -> said.of(task)
                        .filter(assigned -> assigned.people().contains(person))
                        .isPresent())
                .findFirst();
    }

    /** Who this task was assigned to when winding began, by attempt; empty where nobody was named. */
    public static Map<String, String> kept(Tx tx, String task) {
        return kept(tx, ATTEMPT_HAND_KEPT.TASK.eq(task))
                .intoMap(ATTEMPT_HAND_KEPT.ATTEMPT_ID, ATTEMPT_HAND_KEPT.PERSON_ID);
    }

    /** Of what is called again, with a spare or since a start was taken back, people may be named anew. */
    private static Result<Record3<String, String, String>> kept(Tx tx, Condition which) {
        return tx.sql()
                .select(ATTEMPT_HAND_KEPT.ATTEMPT_ID, ATTEMPT_HAND_KEPT.TASK, ATTEMPT_HAND_KEPT.PERSON_ID)
                .from(ATTEMPT_HAND_KEPT)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(ATTEMPT_HAND_KEPT.ATTEMPT_ID))
                .where(which)
                .and(ATTEMPT.STATE.ne(State.CALLED.word()))
                .fetch();
    }

    /**
     * What is said of one attempt, read once for all its tasks.
     *
     * @param kept person by task as winding began, empty before; nobody where nobody was named
     * @param hands person by task
     */
    private record Said(
            Map<String, String> kept,
            Map<String, String> hands,
            Optional<AttemptPlannedRecord> plan,
            List<EntryTask> entry) {
        static Said read(Tx tx, EntryAdded entry, AttemptNumber number) {
            Map<String, String> kept = Assignments.kept(
                            tx, ATTEMPT.ENTRY_ID.eq(entry.id()).and(ATTEMPT.NUMBER.eq(number.running())))
                    .intoMap(ATTEMPT_HAND_KEPT.TASK, ATTEMPT_HAND_KEPT.PERSON_ID);
            return kept.isEmpty()
                    ? new Said(
                            kept,
                            hands(tx, entry, number),
                            planned(tx, entry, number),
                            EntryStore.tasksOf(tx, entry.id()))
                    : new Said(kept, Map.of(), Optional.empty(), List.of());
        }

        /** What was said of a try holds for the next one of the same attempt, until somebody says otherwise. */
        private static Map<String, String> hands(Tx tx, EntryAdded entry, AttemptNumber number) {
            Map<String, String> hands = new HashMap<>();
            for (int running : AttemptNumbers.triesUpTo(tx, entry, number)) {
                tx.sql()
                        .select(ATTEMPT_HAND.TASK, ATTEMPT_HAND.PERSON_ID)
                        .from(ATTEMPT_HAND)
                        .where(ATTEMPT_HAND.ENTRY_ID.eq(entry.id()))
                        .and(ATTEMPT_HAND.NUMBER.eq(running))
                        .fetchMap(ATTEMPT_HAND.TASK, ATTEMPT_HAND.PERSON_ID)
                        .forEach(hands::putIfAbsent);
            }
            hands.values().removeIf(String::isEmpty);
            return hands;
        }

        Optional<Assigned> of(String task) {
            String then = kept.get(task);
            if (then != null) {
                return then.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Assigned(List.of(then), Assigned.Source.KEPT));
            }
            return Optional.ofNullable(hands.get(task))
                    .map(person -> new Assigned(List.of(person), Assigned.Source.BY_HAND))
                    .or(() -> byPlan(task).map(person -> new Assigned(List.of(person), Assigned.Source.PLAN)))
                    .or(() -> entry.stream()
                            .filter(t -> t.task().equals(task))
                            .map(EntryTask::personId)
                            .findFirst()
                            .map(person -> new Assigned(List.of(person), Assigned.Source.ENTRY)));
        }

        private Optional<String> byPlan(String task) {
            return switch (task) {
                case "winds" -> plan.map(AttemptPlannedRecord::getWinds);
                case "loads" -> plan.map(AttemptPlannedRecord::getLoads);
                default -> Optional.empty();
            };
        }
    }

    /** Tag of the motor that the plan in force has for an attempt; empty where it names none. */
    public static Optional<String> plannedMotor(Tx tx, EntryAdded entry, AttemptNumber number) {
        return planned(tx, entry, number).map(AttemptPlannedRecord::getMotor);
    }

    /** When the plan in force has winding begin, ms since 1970 UTC, by entry's name and the rules' number; empty without a plan. */
    public static Map<String, Long> plannedWinds(Tx tx, String event) {
        return tx.sql()
                .select(ATTEMPT_PLANNED.NAME, ATTEMPT_PLANNED.WIND_MS)
                .from(ATTEMPT_PLANNED)
                .where(ATTEMPT_PLANNED.EVENT_ID.eq(event))
                .and(ATTEMPT_PLANNED.WIND_MS.isNotNull())
                .fetchMap(ATTEMPT_PLANNED.NAME, ATTEMPT_PLANNED.WIND_MS);
    }

    /** The plan speaks of the rules' attempts: what it says holds for the next try as well. */
    private static Optional<AttemptPlannedRecord> planned(Tx tx, EntryAdded entry, AttemptNumber number) {
        return tx.sql()
                .selectFrom(ATTEMPT_PLANNED)
                .where(ATTEMPT_PLANNED.EVENT_ID.eq(entry.eventId()))
                .and(ATTEMPT_PLANNED.NAME.eq(entry.name() + " " + number.rule()))
                .fetchOptional();
    }

    private static Assigned cleared(List<CrewAdded> crew, String task) {
        return new Assigned(
                crew.stream()
                        .filter(c -> c.does(task))
                        .map(CrewAdded::personId)
                        .distinct()
                        .toList(),
                Assigned.Source.CLEARED);
    }
}
