package org.skeinday.steps.store;

import static org.skeinday.platform.db.schema.Tables.STEPS_FACT;
import static org.skeinday.platform.db.schema.Tables.STEPS_GATE;
import static org.skeinday.platform.db.schema.Tables.STEPS_MET;
import static org.skeinday.platform.db.schema.Tables.STEPS_RUN;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.StepsFactRecord;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.Corrected;
import org.skeinday.steps.GatePassed;
import org.skeinday.steps.Moment;
import org.skeinday.steps.Pauses;
import org.skeinday.steps.ReadAloud;
import org.skeinday.steps.Reopened;
import org.skeinday.steps.Run;
import org.skeinday.steps.RunBegun;
import org.skeinday.steps.RunFact;
import org.skeinday.steps.Skipped;
import org.skeinday.steps.TakenBack;
import org.skeinday.steps.Ticked;

/** Reads walks through lists: one for each list and thing that it is about. */
public final class RunStore {
    /** The program's times; a tap can be undone as long as any other. */
    public static final Pauses PAUSES = Pauses.usual(Duration.ofSeconds(10));

    private RunStore() {}

    /** Made of both, so that two devices that begin at once begin the same. */
    public static String id(String list, String subject) {
        return list + "~" + subject;
    }

    public static Optional<RunBegun> begun(Tx tx, String id) {
        return tx.sql()
                .selectFrom(STEPS_RUN)
                .where(STEPS_RUN.ID.eq(id))
                .fetchOptional(r -> new RunBegun(
                        r.getId(),
                        r.getListId(),
                        r.getRevision(),
                        r.getSubjectId(),
                        r.getAtMs(),
                        r.getPersonId(),
                        r.getDevice()));
    }

    /** In the revision in which it was begun; with nothing done, in the one in force, when nobody began it. */
    public static Run of(Tx tx, Checklist inForce, String subject) {
        return asOf(tx, inForce, subject, Long.MAX_VALUE);
    }

    /** The same as it stood at a moment, epoch ms. */
    public static Run asOf(Tx tx, Moment moment, String subject, long untilMs) {
        return asOf(tx, ListStore.at(tx, moment), subject, untilMs);
    }

    private static Run asOf(Tx tx, Checklist inForce, String subject, long untilMs) {
        List<String> ids = PlaceLists.runs(tx, inForce, subject);
        Checklist list = ids.stream()
                .flatMap(id -> begun(tx, id).stream())
                .findFirst()
                .flatMap(run -> ListStore.revision(tx, run.listId(), run.revision()))
                .orElse(inForce);
        List<RunFact> facts = ids.stream()
                .flatMap(id -> facts(tx, id).stream())
                .filter(fact -> fact.atMs() <= untilMs)
                .toList();
        return Run.of(list, facts, PAUSES);
    }

    /** Of the list of a pause. */
    public static Run of(Tx tx, Moment moment, String subject) {
        return of(tx, ListStore.at(tx, moment), subject);
    }

    static List<RunFact> facts(Tx tx, String run) {
        return tx.sql().selectFrom(STEPS_FACT).where(STEPS_FACT.RUN_ID.eq(run)).fetch(RunStore::fact);
    }

    /** Whatever happened in a run; empty when there is no such fact. */
    public static Optional<RunFact> fact(Tx tx, String id) {
        return tx.sql().selectFrom(STEPS_FACT).where(STEPS_FACT.ID.eq(id)).fetchOptional(RunStore::fact);
    }

    private static RunFact fact(StepsFactRecord r) {
        String id = r.getId();
        String run = r.getRunId();
        long at = r.getAtMs();
        return switch (r.getKind()) {
            case "step.ticked" ->
                new Ticked(id, run, r.getStepId(), r.getAnswer(), r.getRevision(), at, r.getPersonId(), r.getDevice());
            case "list.read-aloud" -> new ReadAloud(id, run, r.getRevision(), at, r.getPersonId(), r.getDevice());
            case "step.skipped" ->
                new Skipped(id, run, r.getStepId(), r.getReason(), r.getRevision(), at, r.getPersonId(), r.getDevice());
            case "step.taken-back" -> new TakenBack(id, run, r.getAbout(), at, r.getPersonId(), r.getDevice());
            case "step.corrected" ->
                new Corrected(
                        id,
                        run,
                        r.getAbout(),
                        r.getStepId(),
                        r.getDone(),
                        r.getAnswer(),
                        r.getReason(),
                        at,
                        r.getPersonId(),
                        r.getDevice());
            default -> new Reopened(id, run, r.getStepId(), r.getReason(), at, r.getPersonId(), r.getDevice());
        };
    }

    /** Who let winding start although something was open, by attempt. */
    public static List<GatePassed> passes(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(STEPS_GATE)
                .where(STEPS_GATE.SUBJECT_ID.eq(attempt))
                .orderBy(STEPS_GATE.AT_MS, STEPS_GATE.ID)
                .fetch(r -> new GatePassed(
                        r.getId(),
                        r.getSubjectId(),
                        r.getAdultId(),
                        r.getReason(),
                        List.of(Objects.requireNonNull(r.getSteps()).split(",")),
                        r.getAtMs(),
                        r.getDevice(),
                        r.getStationId()));
    }

    /** Ids of cautions whose full text this person had before {@code beforeMs} on a day. */
    public static Set<String> met(Tx tx, String person, String day, long beforeMs) {
        return tx.sql()
                .selectFrom(STEPS_MET)
                .where(STEPS_MET
                        .PERSON_ID
                        .eq(person)
                        .and(STEPS_MET.MET_DAY.eq(day))
                        .and(STEPS_MET.AT_MS.lt(beforeMs)))
                .fetchSet(STEPS_MET.CAUTION_ID);
    }
}
