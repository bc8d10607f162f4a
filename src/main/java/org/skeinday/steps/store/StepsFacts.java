package org.skeinday.steps.store;

import static org.skeinday.platform.db.schema.Tables.STEPS_FACT;
import static org.skeinday.platform.db.schema.Tables.STEPS_GATE;
import static org.skeinday.platform.db.schema.Tables.STEPS_MET;
import static org.skeinday.platform.db.schema.Tables.STEPS_ROW;
import static org.skeinday.platform.db.schema.Tables.STEPS_RUN;

import java.util.List;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.steps.CautionMet;
import org.skeinday.steps.ChecklistRevised;
import org.skeinday.steps.ChecklistRow;
import org.skeinday.steps.Corrected;
import org.skeinday.steps.GatePassed;
import org.skeinday.steps.ReadAloud;
import org.skeinday.steps.Reopened;
import org.skeinday.steps.RunBegun;
import org.skeinday.steps.RunFact;
import org.skeinday.steps.Skipped;
import org.skeinday.steps.TakenBack;
import org.skeinday.steps.Ticked;

/** The kinds of fact of checklists. */
public final class StepsFacts {
    private StepsFacts() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("checklist.revised", ChecklistRevised.class, StepsFacts::revised),
                FactKind.of("run.begun", RunBegun.class, StepsFacts::begun),
                run("step.ticked", Ticked.class),
                run("list.read-aloud", ReadAloud.class),
                run("step.skipped", Skipped.class),
                run("step.taken-back", TakenBack.class),
                run("step.corrected", Corrected.class),
                run("step.reopened", Reopened.class),
                FactKind.of("gate.passed", GatePassed.class, StepsFacts::passed),
                FactKind.of("caution.met", CautionMet.class, StepsFacts::met));
    }

    private static <F extends RunFact> FactKind run(String kind, Class<F> type) {
        return FactKind.of(kind, type, (tx, fact) -> {
            var row = tx.sql().newRecord(STEPS_FACT, fact);
            row.setKind(kind);
            row.setStepId(fact.stepId());
            tx.sql().executeInsert(row);
        });
    }

    private static void begun(Tx tx, RunBegun fact) {
        var row = tx.sql().newRecord(STEPS_RUN, fact);
        row.setStationId(PlaceLists.station(tx, fact).orElse(null));
        tx.sql().executeInsert(row);
    }

    private static void revised(Tx tx, ChecklistRevised fact) {
        int place = 0;
        for (ChecklistRow row : fact.rows()) {
            tx.sql()
                    .insertInto(STEPS_ROW)
                    .set(STEPS_ROW.LIST_ID, row.list())
                    .set(STEPS_ROW.REVISION, row.revision())
                    .set(STEPS_ROW.PLACE, place++)
                    .set(STEPS_ROW.TITLE, row.title())
                    .set(STEPS_ROW.MOMENT, row.moment())
                    .set(STEPS_ROW.WAY, row.way())
                    .set(STEPS_ROW.ALOUD, row.aloud())
                    .set(STEPS_ROW.ENDING, row.next())
                    .set(STEPS_ROW.ITEM, row.item())
                    .set(STEPS_ROW.WORDS, row.text())
                    .set(STEPS_ROW.REASON, row.reason())
                    .set(STEPS_ROW.CRITICAL, row.critical())
                    .set(STEPS_ROW.ANSWER, row.answer())
                    .execute();
        }
    }

    private static void passed(Tx tx, GatePassed fact) {
        tx.sql()
                .insertInto(STEPS_GATE)
                .set(STEPS_GATE.ID, fact.id())
                .set(STEPS_GATE.SUBJECT_ID, fact.subjectId())
                .set(STEPS_GATE.ADULT_ID, fact.adultId())
                .set(STEPS_GATE.REASON, fact.reason())
                .set(STEPS_GATE.STEPS, String.join(",", fact.steps()))
                .set(STEPS_GATE.AT_MS, fact.atMs())
                .set(STEPS_GATE.DEVICE, fact.device())
                .set(STEPS_GATE.STATION_ID, fact.stationId())
                .execute();
    }

    /** The first time counts. */
    private static void met(Tx tx, CautionMet fact) {
        boolean known = tx.sql()
                .fetchExists(
                        STEPS_MET,
                        STEPS_MET
                                .PERSON_ID
                                .eq(fact.personId())
                                .and(STEPS_MET.MET_DAY.eq(fact.day()))
                                .and(STEPS_MET.CAUTION_ID.eq(fact.cautionId())));
        if (!known) {
            tx.sql()
                    .insertInto(STEPS_MET)
                    .set(STEPS_MET.PERSON_ID, fact.personId())
                    .set(STEPS_MET.MET_DAY, fact.day())
                    .set(STEPS_MET.CAUTION_ID, fact.cautionId())
                    .set(STEPS_MET.AT_MS, fact.atMs())
                    .execute();
        }
    }
}
