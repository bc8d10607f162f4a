package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_RULES_CHANGED;
import static org.skeinday.platform.db.schema.Tables.CONTEST_WINDOW_MOVED;

import java.util.List;
import org.skeinday.contest.RulesChanged;
import org.skeinday.contest.WindowMoved;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** What was changed of rules and windows after a flight was official, each with its reason. */
public final class ChangesStore {
    private ChangesStore() {}

    static List<FactKind> kinds() {
        return List.of(
                FactKind.of("rules.changed", RulesChanged.class, Rows.into(CONTEST_RULES_CHANGED)),
                FactKind.of("window.moved", WindowMoved.class, Rows.into(CONTEST_WINDOW_MOVED)));
    }

    /** The first one first. */
    public static List<RulesChanged> ofRules(Tx tx, String event) {
        return tx.sql()
                .selectFrom(CONTEST_RULES_CHANGED)
                .where(CONTEST_RULES_CHANGED.EVENT_ID.eq(event))
                .orderBy(CONTEST_RULES_CHANGED.AT_MS, CONTEST_RULES_CHANGED.ID)
                .fetchInto(RulesChanged.class);
    }

    /** The first one first. */
    public static List<WindowMoved> ofWindows(Tx tx, String event) {
        return tx.sql()
                .selectFrom(CONTEST_WINDOW_MOVED)
                .where(CONTEST_WINDOW_MOVED.EVENT_ID.eq(event))
                .orderBy(CONTEST_WINDOW_MOVED.AT_MS, CONTEST_WINDOW_MOVED.ID)
                .fetchInto(WindowMoved.class);
    }
}
