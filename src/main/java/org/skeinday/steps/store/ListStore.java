package org.skeinday.steps.store;

import static org.skeinday.platform.db.schema.Tables.STEPS_ROW;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ChecklistRow;
import org.skeinday.steps.Checklists;
import org.skeinday.steps.KnownLists;
import org.skeinday.steps.Moment;

/** Reads lists: those of the record, and where it has none yet, the ones that come with the program. */
public final class ListStore {
    private ListStore() {}

    /** Each list in the revision that is in force: the highest, the record's before the program's. In the day's order. */
    public static List<Checklist> all(Tx tx) {
        return inForce(recorded(tx));
    }

    private static List<Checklist> inForce(List<Checklist> recorded) {
        Map<String, Checklist> byId = new LinkedHashMap<>();
        ShippedLists.ALL.forEach(list -> byId.put(list.id(), list));
        for (Checklist list : recorded) {
            byId.merge(list.id(), list, (a, b) -> b.revision() >= a.revision() ? b : a);
        }
        return new ArrayList<>(byId.values());
    }

    /** What a file of lists is looked at beside. */
    public static KnownLists known(Tx tx) {
        List<Checklist> recorded = recorded(tx);
        return new KnownLists(inForce(recorded), everShipped(), recorded);
    }

    /** As they come with this program, and as they came with earlier ones. */
    public static List<Checklist> everShipped() {
        return Stream.concat(ShippedLists.ALL.stream(), ShippedLists.BEFORE.stream())
                .toList();
    }

    /** As they come with the program. */
    public static List<Checklist> shipped() {
        return ShippedLists.ALL;
    }

    /** Every revision that is in the record: what was walked through, and what a coach has made of it. */
    public static List<Checklist> recorded(Tx tx) {
        return of(tx, STEPS_ROW.LIST_ID.isNotNull());
    }

    /** In force. */
    public static Optional<Checklist> find(Tx tx, String id) {
        return all(tx).stream().filter(list -> list.id().equals(id)).findFirst();
    }

    /** The one of a pause: each pause has one list. */
    public static Checklist at(Tx tx, Moment moment) {
        return all(tx).stream()
                .filter(list -> list.moment() == moment)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("There is no list of " + moment.word()));
    }

    /** Of the record. */
    public static Optional<Checklist> revision(Tx tx, String id, int revision) {
        return of(tx, STEPS_ROW.LIST_ID.eq(id).and(STEPS_ROW.REVISION.eq(revision))).stream()
                .findFirst();
    }

    private static List<Checklist> of(Tx tx, Condition which) {
        Map<String, List<ChecklistRow>> lists = new LinkedHashMap<>();
        tx.sql()
                .selectFrom(STEPS_ROW)
                .where(which)
                .orderBy(STEPS_ROW.LIST_ID, STEPS_ROW.REVISION, STEPS_ROW.PLACE)
                .fetch(r -> new ChecklistRow(
                        r.getListId(),
                        r.getRevision(),
                        r.getTitle(),
                        r.getMoment(),
                        r.getWay(),
                        r.getAloud(),
                        r.getEnding(),
                        r.getItem(),
                        r.getWords(),
                        r.getReason(),
                        r.getCritical(),
                        r.getAnswer()))
                .forEach(row -> lists.computeIfAbsent(row.list() + " " + row.revision(), key -> new ArrayList<>())
                        .add(row));
        return lists.values().stream()
                .flatMap(rows -> Checklists.of(rows).stream())
                .toList();
    }
}
