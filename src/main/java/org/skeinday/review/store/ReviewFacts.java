package org.skeinday.review.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_EVENT;
import static org.skeinday.platform.db.schema.Tables.REVIEW_AGED_BATCH;
import static org.skeinday.platform.db.schema.Tables.REVIEW_CHANGE_LINE;
import static org.skeinday.platform.db.schema.Tables.REVIEW_SEASON;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.review.ChangeNextTime;
import org.skeinday.review.SeasonBegun;

/** The evening's kinds of fact, and what they come to. */
public final class ReviewFacts {
    private ReviewFacts() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("event.change-next-time", ChangeNextTime.class, ReviewFacts::change),
                FactKind.of("season.begun", SeasonBegun.class, ReviewFacts::begun));
    }

    private static void change(Tx tx, ChangeNextTime fact) {
        Rows.remove(tx, REVIEW_CHANGE_LINE.EVENT_ID, fact.eventId());
        for (int i = 0; i < fact.lines().size(); i++) {
            tx.sql()
                    .insertInto(
                            REVIEW_CHANGE_LINE,
                            REVIEW_CHANGE_LINE.EVENT_ID,
                            REVIEW_CHANGE_LINE.PLACE,
                            REVIEW_CHANGE_LINE.LINE)
                    .values(fact.eventId(), i, fact.lines().get(i))
                    .execute();
        }
    }

    private static void begun(Tx tx, SeasonBegun fact) {
        tx.sql()
                .insertInto(REVIEW_SEASON, REVIEW_SEASON.FIRST_DAY, REVIEW_SEASON.AT_MS, REVIEW_SEASON.PERSON_ID)
                .values(fact.firstDay(), fact.atMs(), fact.personId())
                .execute();
        for (String batch : fact.agedBatches()) {
            Rows.remove(tx, REVIEW_AGED_BATCH.BATCH_ID, batch);
            tx.sql()
                    .insertInto(REVIEW_AGED_BATCH, REVIEW_AGED_BATCH.BATCH_ID, REVIEW_AGED_BATCH.SINCE_DAY)
                    .values(batch, fact.firstDay())
                    .execute();
        }
    }

    /** By event; one that says nothing is not there. */
    public static List<ChangeNextTime.Dated> changes(Tx tx) {
        Map<String, List<String>> lines = tx.sql()
                .selectFrom(REVIEW_CHANGE_LINE)
                .orderBy(REVIEW_CHANGE_LINE.EVENT_ID, REVIEW_CHANGE_LINE.PLACE)
                .fetchGroups(REVIEW_CHANGE_LINE.EVENT_ID, REVIEW_CHANGE_LINE.LINE);
        Map<String, List<String>> byEvent = new LinkedHashMap<>(lines);
        return tx.sql()
                .select(CONTEST_EVENT.ID, CONTEST_EVENT.NAME, CONTEST_EVENT.DAY)
                .from(CONTEST_EVENT)
                .where(CONTEST_EVENT.ID.in(byEvent.keySet()))
                .orderBy(CONTEST_EVENT.DAY, CONTEST_EVENT.NAME)
                .fetch(r -> new ChangeNextTime.Dated(
                        r.value3(),
                        r.value2(),
                        new ChangeNextTime(r.value1(), byEvent.getOrDefault(r.value1(), List.of()))));
    }

    /** Of one event; none when nobody said anything. */
    public static ChangeNextTime change(Tx tx, String event) {
        return new ChangeNextTime(
                event,
                tx.sql()
                        .selectFrom(REVIEW_CHANGE_LINE)
                        .where(REVIEW_CHANGE_LINE.EVENT_ID.eq(event))
                        .orderBy(REVIEW_CHANGE_LINE.PLACE)
                        .fetch(REVIEW_CHANGE_LINE.LINE));
    }
}
