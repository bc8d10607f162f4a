package org.skeinday.dayplan.store;

import static org.skeinday.platform.db.schema.Tables.DAYPLAN_TAKEN;
import static org.skeinday.platform.db.schema.Tables.DAYPLAN_TASK;

import java.util.List;
import java.util.Optional;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** The plan in force. */
public final class PlanStore {
    private PlanStore() {}

    public static List<FactKind> kinds() {
        return List.of(FactKind.of("plan.taken", PlanTaken.class, PlanStore::taken));
    }

    private static void taken(Tx tx, PlanTaken fact) {
        Rows.remove(tx, DAYPLAN_TAKEN.EVENT_ID, fact.eventId());
        Rows.remove(tx, DAYPLAN_TASK.EVENT_ID, fact.eventId());
        tx.sql()
                .insertInto(DAYPLAN_TAKEN, DAYPLAN_TAKEN.EVENT_ID, DAYPLAN_TAKEN.AT_MS, DAYPLAN_TAKEN.PERSON_ID)
                .values(fact.eventId(), fact.atMs(), fact.personId())
                .execute();
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
        }
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
        return tx.sql()
                .selectFrom(DAYPLAN_TAKEN)
                .where(DAYPLAN_TAKEN.EVENT_ID.eq(event))
                .fetchOptional(r -> new PlanTaken(r.getEventId(), r.getAtMs(), r.getPersonId(), tasks));
    }
}
