package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.RESULT_FINAL;
import static org.skeinday.platform.db.schema.Tables.RESULT_FINAL_LINE;

import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.ResultFinal;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** The versions of results that were made final, with what they showed. */
public final class ResultVersions {
    private ResultVersions() {}

    static List<FactKind> kinds() {
        return List.of(FactKind.of("result.final", ResultFinal.class, ResultVersions::made));
    }

    private static void made(Tx tx, ResultFinal fact) {
        tx.sql()
                .insertInto(RESULT_FINAL)
                .set(RESULT_FINAL.EVENT_ID, fact.eventId())
                .set(RESULT_FINAL.VERSION, fact.version())
                .set(RESULT_FINAL.PERSON_ID, fact.personId())
                .set(RESULT_FINAL.DEVICE, fact.device())
                .set(RESULT_FINAL.AT_MS, fact.atMs())
                .execute();
        int place = 0;
        for (ResultFinal.Line line : fact.lines()) {
            tx.sql()
                    .insertInto(RESULT_FINAL_LINE)
                    .set(RESULT_FINAL_LINE.EVENT_ID, fact.eventId())
                    .set(RESULT_FINAL_LINE.VERSION, fact.version())
                    .set(RESULT_FINAL_LINE.PLACE, place++)
                    .set(RESULT_FINAL_LINE.ABOUT, line.about())
                    .set(RESULT_FINAL_LINE.SHOWN, line.shown())
                    .execute();
        }
    }

    /** The version that was made final last. */
    public static Optional<ResultFinal> last(Tx tx, String eventId) {
        return tx.sql()
                .selectFrom(RESULT_FINAL)
                .where(RESULT_FINAL.EVENT_ID.eq(eventId))
                .orderBy(RESULT_FINAL.VERSION.desc())
                .limit(1)
                .fetchOptional(row -> new ResultFinal(
                        eventId,
                        row.getVersion(),
                        row.getPersonId(),
                        row.getDevice(),
                        row.getAtMs(),
                        lines(tx, eventId, row.getVersion())));
    }

    private static List<ResultFinal.Line> lines(Tx tx, String eventId, int version) {
        return tx.sql()
                .selectFrom(RESULT_FINAL_LINE)
                .where(RESULT_FINAL_LINE.EVENT_ID.eq(eventId))
                .and(RESULT_FINAL_LINE.VERSION.eq(version))
                .orderBy(RESULT_FINAL_LINE.PLACE)
                .fetch(row -> new ResultFinal.Line(row.getAbout(), row.getShown()));
    }
}
