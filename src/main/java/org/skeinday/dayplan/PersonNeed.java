package org.skeinday.dayplan;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * One person who may do something.
 *
 * @param clearance what that person must be cleared for, for example {@code loads}; nothing when null
 * @param person the one who already does it; anyone cleared when null. Not null when the clearance is
 */
public record PersonNeed(
        @Nullable String clearance, @Nullable String person) {
    public PersonNeed {
        if (clearance != null) {
            Preconditions.named("A clearance", clearance);
        } else if (person == null) {
            throw new IllegalArgumentException("A need must name a clearance or a person, but named neither");
        }
    }

    public static PersonNeed anyone(String clearance) {
        return new PersonNeed(clearance, null);
    }

    /** Whatever they are cleared for. */
    public static PersonNeed of(String person) {
        return new PersonNeed(null, person);
    }

    boolean mayBe(Person someone) {
        return (clearance == null || someone.clearances().contains(clearance))
                && (person == null || person.equals(someone.id()));
    }

    /** @return the clearances that tasks ask for, each once, in the order of the alphabet */
    static SortedSet<String> clearances(List<Task> tasks) {
        SortedSet<String> asked = new TreeSet<>();
        for (Task task : tasks) {
            for (PersonNeed need : task.people()) {
                if (need.clearance() != null) {
                    asked.add(need.clearance());
                }
            }
        }
        return asked;
    }
}
