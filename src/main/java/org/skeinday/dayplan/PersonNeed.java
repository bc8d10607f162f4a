package org.skeinday.dayplan;

import org.jspecify.annotations.Nullable;

/**
 * One person who may do something.
 *
 * @param clearance what that person must be cleared for, for example {@code loads}
 * @param person the one who already does it; anyone cleared when null
 */
public record PersonNeed(String clearance, @Nullable String person) {
    public PersonNeed {
        Require.name("A clearance", clearance);
    }

    public static PersonNeed anyone(String clearance) {
        return new PersonNeed(clearance, null);
    }

    boolean mayBe(Person someone) {
        return someone.clearances().contains(clearance) && (person == null || person.equals(someone.id()));
    }
}
