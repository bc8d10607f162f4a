package org.skeinday.dayplan.store;

import static org.skeinday.platform.db.schema.Tables.DAYPLAN_GIVEN_UP;
import static org.skeinday.platform.db.schema.Tables.DAYPLAN_PLANNED;
import static org.skeinday.platform.db.schema.Tables.DAYPLAN_SETBACK;
import static org.skeinday.platform.db.schema.Tables.DAYPLAN_TAKEN;
import static org.skeinday.platform.db.schema.Tables.DAYPLAN_TASK;
import static org.skeinday.platform.db.schema.Tables.DAYPLAN_WINDOW;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Part;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.dayplan.PartTask;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.PlannedDuration;
import org.skeinday.dayplan.Setback;
import org.skeinday.dayplan.SetbackOver;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** The plan in force. */
public final class PlanStore {
    private PlanStore() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("plan.taken", PlanTaken.class, PlanStore::taken),
                FactKind.of("day.setback", Setback.class, PlanStore::setBack),
                FactKind.of("day.setback-over", SetbackOver.class, PlanStore::over));
    }

    private static void setBack(Tx tx, Setback fact) {
        tx.sql()
                .insertInto(
                        DAYPLAN_SETBACK,
                        DAYPLAN_SETBACK.ID,
                        DAYPLAN_SETBACK.EVENT_ID,
                        DAYPLAN_SETBACK.KIND,
                        DAYPLAN_SETBACK.WHO,
                        DAYPLAN_SETBACK.BEFORE_ATTEMPT,
                        DAYPLAN_SETBACK.FROM_MS,
                        DAYPLAN_SETBACK.LASTS_S,
                        DAYPLAN_SETBACK.CURES_S,
                        DAYPLAN_SETBACK.BY_PERSON)
                .values(
                        fact.id(),
                        fact.eventId(),
                        fact.kind(),
                        fact.who(),
                        fact.before(),
                        fact.fromMs(),
                        fact.lastsS(),
                        fact.curesS(),
                        fact.byPerson())
                .execute();
    }

    private static void over(Tx tx, SetbackOver fact) {
        tx.sql()
                .update(DAYPLAN_SETBACK)
                .set(DAYPLAN_SETBACK.OVER_MS, fact.atMs())
                .where(DAYPLAN_SETBACK.ID.eq(fact.id()))
                .execute();
    }

    /** Those of an event that are not over, in the order in which they were told. */
    public static List<Setback> setbacks(Tx tx, String event) {
        return tx.sql()
                .select(
                        DAYPLAN_SETBACK.ID,
                        DAYPLAN_SETBACK.EVENT_ID,
                        DAYPLAN_SETBACK.KIND,
                        DAYPLAN_SETBACK.WHO,
                        DAYPLAN_SETBACK.BEFORE_ATTEMPT,
                        DAYPLAN_SETBACK.FROM_MS,
                        DAYPLAN_SETBACK.LASTS_S,
                        DAYPLAN_SETBACK.CURES_S,
                        DAYPLAN_SETBACK.BY_PERSON)
                .from(DAYPLAN_SETBACK)
                .where(DAYPLAN_SETBACK.EVENT_ID.eq(event).and(DAYPLAN_SETBACK.OVER_MS.isNull()))
                .orderBy(DAYPLAN_SETBACK.FROM_MS, DAYPLAN_SETBACK.ID)
                .fetchInto(Setback.class);
    }

    /** Its attempts stand in the tables by the rules' numbers, whatever they were taken by. */
    private static void taken(Tx tx, PlanTaken asTaken) {
        PlannedTries tries = PlannedTries.of(tx, asTaken);
        PlanTaken fact = tries.byRules();
        Rows.remove(tx, DAYPLAN_TAKEN.EVENT_ID, fact.eventId());
        Rows.remove(tx, DAYPLAN_TASK.EVENT_ID, fact.eventId());
        Rows.remove(tx, DAYPLAN_WINDOW.EVENT_ID, fact.eventId());
        Rows.remove(tx, DAYPLAN_GIVEN_UP.EVENT_ID, fact.eventId());
        tx.sql()
                .insertInto(DAYPLAN_TAKEN, DAYPLAN_TAKEN.EVENT_ID, DAYPLAN_TAKEN.AT_MS, DAYPLAN_TAKEN.PERSON_ID)
                .values(fact.eventId(), fact.atMs(), fact.personId())
                .execute();
        Assignments.plan(tx, fact.eventId(), assigned(fact));
        for (String attempt : fact.givenUp()) {
            tx.sql()
                    .insertInto(DAYPLAN_GIVEN_UP, DAYPLAN_GIVEN_UP.EVENT_ID, DAYPLAN_GIVEN_UP.ATTEMPT)
                    .values(fact.eventId(), attempt)
                    .execute();
        }
        for (PlanTaken.Window window : fact.windows()) {
            tx.sql()
                    .insertInto(
                            DAYPLAN_WINDOW,
                            DAYPLAN_WINDOW.EVENT_ID,
                            DAYPLAN_WINDOW.ENTRY,
                            DAYPLAN_WINDOW.OPENS_MS,
                            DAYPLAN_WINDOW.CLOSES_MS)
                    .values(fact.eventId(), window.entry(), window.opensMs(), window.closesMs())
                    .execute();
        }
        for (PlanTaken.Planned task : fact.tasks()) {
            tx.sql()
                    .insertInto(
                            DAYPLAN_TASK,
                            DAYPLAN_TASK.EVENT_ID,
                            DAYPLAN_TASK.TASK,
                            DAYPLAN_TASK.START_MS,
                            DAYPLAN_TASK.END_MS,
                            DAYPLAN_TASK.PEOPLE,
                            DAYPLAN_TASK.MOTOR)
                    .values(fact.eventId(), task.task(), task.startMs(), task.endMs(), task.people(), task.motor())
                    .execute();
            keepPlanned(tx, fact, task, tries.nth(task));
        }
    }

    /** What it says of each attempt: the motor, and who winds and loads. */
    private static List<Assignments.Planned> assigned(PlanTaken fact) {
        Map<String, Assignments.Planned> byName = new LinkedHashMap<>();
        for (PlanTaken.Planned task : fact.tasks()) {
            PartTask about = PartTask.parse(task.task());
            if (about.part() != null) {
                byName.merge(about.attempt(), assigned(about, task), PlanStore::both);
            }
        }
        return List.copyOf(byName.values());
    }

    private static Assignments.Planned assigned(PartTask about, PlanTaken.Planned task) {
        @Nullable String first = task.who().stream().findFirst().orElse(null);
        return new Assignments.Planned(
                about.attempt(),
                task.motor(),
                about.part() == Part.WIND ? first : null,
                about.part() == Part.LOAD ? first : null,
                about.part() == Part.WIND ? (Long) task.startMs() : null);
    }

    private static Assignments.Planned both(Assignments.Planned one, Assignments.Planned other) {
        return new Assignments.Planned(
                one.name(),
                either(one.motor(), other.motor()),
                either(one.winds(), other.winds()),
                either(one.loads(), other.loads()),
                either(one.windMs(), other.windMs()));
    }

    private static <T> @Nullable T either(@Nullable T one, @Nullable T other) {
        return one == null ? other : one;
    }

    /** A task that runs already stands in the plan as it went: it was planned before. */
    private static void keepPlanned(Tx tx, PlanTaken fact, PlanTaken.Planned task, int nth) {
        if (task.startMs() >= fact.atMs()) {
            Rows.put(DAYPLAN_PLANNED)
                    .accept(
                            tx,
                            new PlannedDuration(
                                    fact.eventId(), task.task(), nth, (task.endMs() - task.startMs()) / 1000));
        }
    }

    /** Of all events, by the last plan before each task began. */
    public static List<PlannedDuration> planned(Tx tx) {
        return tx.sql()
                .selectFrom(DAYPLAN_PLANNED)
                .orderBy(DAYPLAN_PLANNED.EVENT_ID, DAYPLAN_PLANNED.TASK, DAYPLAN_PLANNED.NTH)
                .fetchInto(PlannedDuration.class);
    }

    /** Empty before the first was taken. Its tasks come by their starts. */
    public static Optional<PlanTaken> inForce(Tx tx, String event) {
        List<PlanTaken.Planned> tasks = tx.sql()
                .select(
                        DAYPLAN_TASK.TASK,
                        DAYPLAN_TASK.START_MS,
                        DAYPLAN_TASK.END_MS,
                        DAYPLAN_TASK.PEOPLE,
                        DAYPLAN_TASK.MOTOR)
                .from(DAYPLAN_TASK)
                .where(DAYPLAN_TASK.EVENT_ID.eq(event))
                .orderBy(DAYPLAN_TASK.START_MS, DAYPLAN_TASK.TASK)
                .fetchInto(PlanTaken.Planned.class);
        List<PlanTaken.Window> windows = tx.sql()
                .select(DAYPLAN_WINDOW.ENTRY, DAYPLAN_WINDOW.OPENS_MS, DAYPLAN_WINDOW.CLOSES_MS)
                .from(DAYPLAN_WINDOW)
                .where(DAYPLAN_WINDOW.EVENT_ID.eq(event))
                .orderBy(DAYPLAN_WINDOW.ENTRY)
                .fetchInto(PlanTaken.Window.class);
        List<String> givenUp = tx.sql()
                .select(DAYPLAN_GIVEN_UP.ATTEMPT)
                .from(DAYPLAN_GIVEN_UP)
                .where(DAYPLAN_GIVEN_UP.EVENT_ID.eq(event))
                .orderBy(DAYPLAN_GIVEN_UP.ATTEMPT)
                .fetch(DAYPLAN_GIVEN_UP.ATTEMPT);
        return tx.sql()
                .selectFrom(DAYPLAN_TAKEN)
                .where(DAYPLAN_TAKEN.EVENT_ID.eq(event))
                .fetchOptional(r ->
                        new PlanTaken(r.getEventId(), r.getAtMs(), r.getPersonId(), tasks, windows, givenUp, true));
    }
}
