package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_AT_HAND;
import static org.skeinday.platform.db.schema.Tables.CONTEST_CREW;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY_MODEL;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY_MOTOR;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY_TASK;
import static org.skeinday.platform.db.schema.Tables.CONTEST_EVENT;
import static org.skeinday.platform.db.schema.Tables.CONTEST_FLIGHT_RULES;
import static org.skeinday.platform.db.schema.Tables.CONTEST_MODEL;
import static org.skeinday.platform.db.schema.Tables.CONTEST_MODEL_NOTE;
import static org.skeinday.platform.db.schema.Tables.CONTEST_STATION;
import static org.skeinday.platform.db.schema.Tables.CONTEST_TERMS;
import static org.skeinday.platform.db.schema.Tables.CONTEST_WINDOW;

import java.util.ArrayList;
import java.util.List;
import org.jooq.TableField;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.CrewRemoved;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EntryMotor;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.EventAtHand;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.ModelNote;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.Terms;
import org.skeinday.contest.UnitsChosen;
import org.skeinday.contest.WindowAdded;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Removed;

/** The contest's kinds of fact. Columns carry the names of the record's fields, so one insert serves all. */
public final class ContestFacts {
    private ContestFacts() {}

    public static List<FactKind> kinds() {
        List<FactKind> kinds = new ArrayList<>(ChangesStore.kinds());
        kinds.addAll(List.of(
                FactKind.of("event.added", EventAdded.class, Rows.into(CONTEST_EVENT)),
                FactKind.of("event.changed", EventAdded.class, Rows.change(CONTEST_EVENT)),
                FactKind.of("event.removed", Removed.class, (tx, fact) -> {
                    Rows.remove(tx, CONTEST_EVENT.ID, fact.id());
                    Rows.remove(tx, CONTEST_TERMS.EVENT_ID, fact.id());
                    Rows.remove(tx, CONTEST_FLIGHT_RULES.EVENT_ID, fact.id());
                    Rows.remove(tx, CONTEST_AT_HAND.EVENT_ID, fact.id());
                }),
                FactKind.of("units.chosen", UnitsChosen.class, TeamUnits::choose),
                FactKind.of("event.at-hand", EventAtHand.class, ContestFacts::atHand),
                FactKind.of("terms.set", Terms.class, Rows.put(CONTEST_TERMS)),
                FactKind.of("rules.set", FlightRules.class, Rows.put(CONTEST_FLIGHT_RULES)),
                FactKind.of("entry.added", EntryAdded.class, Rows.into(CONTEST_ENTRY)),
                FactKind.of("entry.changed", EntryAdded.class, ContestFacts::entryChanged),
                FactKind.of("entry.removed", Removed.class, (tx, fact) -> {
                    Rows.remove(tx, CONTEST_ENTRY.ID, fact.id());
                    clearEntry(tx, fact.id());
                }),
                FactKind.of("entry.model", EntryModel.class, Rows.into(CONTEST_ENTRY_MODEL)),
                FactKind.of("entry.motor", EntryMotor.class, Rows.into(CONTEST_ENTRY_MOTOR)),
                FactKind.of("entry.task", EntryTask.class, Rows.into(CONTEST_ENTRY_TASK)),
                FactKind.of("model.added", ModelAdded.class, Rows.into(CONTEST_MODEL)),
                FactKind.of("model.changed", ModelAdded.class, Rows.change(CONTEST_MODEL)),
                removed("model.removed", CONTEST_MODEL.ID),
                FactKind.of("model.note", ModelNote.class, Rows.put(CONTEST_MODEL_NOTE)),
                removed("note.removed", CONTEST_MODEL_NOTE.ID),
                FactKind.of("window.added", WindowAdded.class, Rows.into(CONTEST_WINDOW)),
                FactKind.of("window.changed", WindowAdded.class, Rows.change(CONTEST_WINDOW)),
                removed("window.removed", CONTEST_WINDOW.ID),
                FactKind.of("station.added", StationAdded.class, Rows.into(CONTEST_STATION)),
                FactKind.of("station.changed", StationAdded.class, Rows.change(CONTEST_STATION)),
                removed("station.removed", CONTEST_STATION.ID),
                FactKind.of("crew.added", CrewAdded.class, Rows.into(CONTEST_CREW)),
                FactKind.of("crew.removed", CrewRemoved.class, ContestFacts::crewRemoved)));
        return List.copyOf(kinds);
    }

    private static FactKind removed(String kind, TableField<?, String> id) {
        return FactKind.of(kind, Removed.class, (tx, fact) -> Rows.remove(tx, id, fact.id()));
    }

    private static void atHand(Tx tx, EventAtHand fact) {
        tx.sql().deleteFrom(CONTEST_AT_HAND).execute();
        tx.sql()
                .insertInto(CONTEST_AT_HAND, CONTEST_AT_HAND.ID, CONTEST_AT_HAND.EVENT_ID)
                .values(1, fact.eventId())
                .execute();
    }

    /** Its models, motors and tasks follow as facts of their own. */
    private static void entryChanged(Tx tx, EntryAdded fact) {
        Rows.change(CONTEST_ENTRY).accept(tx, fact);
        clearEntry(tx, fact.id());
    }

    private static void clearEntry(Tx tx, String entry) {
        Rows.remove(tx, CONTEST_ENTRY_MODEL.ENTRY_ID, entry);
        Rows.remove(tx, CONTEST_ENTRY_MOTOR.ENTRY_ID, entry);
        Rows.remove(tx, CONTEST_ENTRY_TASK.ENTRY_ID, entry);
    }

    private static void crewRemoved(Tx tx, CrewRemoved fact) {
        tx.sql()
                .deleteFrom(CONTEST_CREW)
                .where(CONTEST_CREW.PERSON_ID.eq(fact.personId()).and(CONTEST_CREW.EVENT_ID.eq(fact.eventId())))
                .execute();
    }
}
