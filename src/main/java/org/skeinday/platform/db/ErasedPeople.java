package org.skeinday.platform.db;

import static org.skeinday.platform.db.schema.Tables.ERASED_PERSON;

import java.util.Set;

/** People whose names were erased. */
public final class ErasedPeople {
    private ErasedPeople() {}

    /** Again for the same person changes nothing. */
    public static void note(Tx tx, String person, long atMs) {
        tx.prepared().run("merge into erased_person (person_id, at_ms) key (person_id) values (?, ?)", person, atMs);
    }

    public static Set<String> all(Tx tx) {
        return tx.sql().select(ERASED_PERSON.PERSON_ID).from(ERASED_PERSON).fetchSet(ERASED_PERSON.PERSON_ID);
    }
}
