package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_CREW;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY_MODEL;
import static org.skeinday.platform.db.schema.Tables.CONTEST_EVENT;
import static org.skeinday.platform.db.schema.Tables.CONTEST_MODEL;
import static org.skeinday.platform.db.schema.Tables.CONTEST_WINDOW;

import java.util.List;
import org.jooq.Table;
import org.jooq.TableRecord;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** The contest's kinds of fact. Columns carry the names of the record's fields, so one insert serves all. */
public final class ContestFacts {
    private ContestFacts() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("event.added", EventAdded.class, (tx, fact) -> insert(tx, CONTEST_EVENT, fact)),
                FactKind.of("entry.added", EntryAdded.class, (tx, fact) -> insert(tx, CONTEST_ENTRY, fact)),
                FactKind.of("model.added", ModelAdded.class, (tx, fact) -> insert(tx, CONTEST_MODEL, fact)),
                FactKind.of("entry.model", EntryModel.class, (tx, fact) -> insert(tx, CONTEST_ENTRY_MODEL, fact)),
                FactKind.of("window.added", WindowAdded.class, (tx, fact) -> insert(tx, CONTEST_WINDOW, fact)),
                FactKind.of("crew.added", CrewAdded.class, (tx, fact) -> insert(tx, CONTEST_CREW, fact)));
    }

    private static <R extends TableRecord<R>> void insert(Tx tx, Table<R> table, Object fact) {
        tx.sql().executeInsert(tx.sql().newRecord(table, fact));
    }
}
