package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY_MODEL;
import static org.skeinday.platform.db.schema.Tables.CONTEST_MODEL;
import static org.skeinday.platform.db.schema.Tables.CONTEST_MODEL_NOTE;

import java.util.List;
import java.util.Optional;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.ModelNote;
import org.skeinday.platform.db.Tx;

/** Reads models and whose they are. */
public final class ModelStore {
    private ModelStore() {}

    /** By name. */
    public static List<ModelAdded> all(Tx tx) {
        return tx.sql().selectFrom(CONTEST_MODEL).orderBy(CONTEST_MODEL.NAME).fetchInto(ModelAdded.class);
    }

    public static Optional<ModelAdded> find(Tx tx, String id) {
        return tx.sql().selectFrom(CONTEST_MODEL).where(CONTEST_MODEL.ID.eq(id)).fetchOptionalInto(ModelAdded.class);
    }

    /** The models of one entry, by name. */
    public static List<ModelAdded> ofEntry(Tx tx, String entryId) {
        return tx.sql()
                .select(CONTEST_MODEL.fields())
                .from(CONTEST_MODEL)
                .join(CONTEST_ENTRY_MODEL)
                .on(CONTEST_ENTRY_MODEL.MODEL_ID.eq(CONTEST_MODEL.ID))
                .where(CONTEST_ENTRY_MODEL.ENTRY_ID.eq(entryId))
                .orderBy(CONTEST_MODEL.NAME)
                .fetchInto(ModelAdded.class);
    }

    /** What was trimmed and repaired, the last first. */
    public static List<ModelNote> notes(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_MODEL_NOTE)
                .orderBy(CONTEST_MODEL_NOTE.AT_MS.desc(), CONTEST_MODEL_NOTE.ID)
                .fetchInto(ModelNote.class);
    }

    /** Which entry may fly which model, of all events. */
    public static List<EntryModel> entryModels(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_ENTRY_MODEL)
                .orderBy(CONTEST_ENTRY_MODEL.ENTRY_ID, CONTEST_ENTRY_MODEL.MODEL_ID)
                .fetchInto(EntryModel.class);
    }
}
