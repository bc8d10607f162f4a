package org.skeinday.steps;

import java.util.List;

/**
 * The lists of a record, and those that the program brings or once brought: a file with one of these brings nothing new.
 *
 * @param inForce one of each id, in the day's order
 * @param shipped with this program and with earlier ones
 * @param recorded revisions that the record holds: what was walked through, and what a coach has made of it
 */
public record KnownLists(List<Checklist> inForce, List<Checklist> shipped, List<Checklist> recorded) {
    /** Of an empty record. */
    public static final KnownLists NONE = new KnownLists(List.of(), List.of(), List.of());

    public KnownLists {
        inForce = List.copyOf(inForce);
        shipped = List.copyOf(shipped);
        recorded = List.copyOf(recorded);
    }

    /** Whether nobody has worded it anew. */
    public boolean isShipped(Checklist list) {
        return shipped.contains(list);
    }

    /**
     * Whether a coach may have written another list under the number of this one: the program worded it anew since, and the
     * coach counted on from what an earlier program brought. Once the record holds this one, its number is taken.
     */
    public boolean isCountedTwice(Checklist list) {
        return isShipped(list)
                && recorded.stream().noneMatch(list::equals)
                && shipped.stream().anyMatch(s -> s.id().equals(list.id()) && s.revision() < list.revision());
    }
}
