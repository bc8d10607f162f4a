package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.HandKept;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Fact;

/** Keeps who does what of an attempt at the moment when it goes beyond its call: its first crank turn, as far as anybody says. */
public final class HandsThen {
    private HandsThen() {}

    /** @param now as it is before the act; nothing is kept unless it is called, or where it is another team's */
    public static List<Fact> kept(Tx tx, AttemptNow now) {
        List<Fact> facts = new ArrayList<>();
        if (now.state() == State.CALLED) {
            EntryStore.find(tx, now.entryId())
                    .filter(EntryAdded::own)
                    .ifPresent(entry -> Assignments.of(tx, entry, now.number())
                            .forEach((task, assigned) -> facts.add(Fact.of(
                                    "attempt.hand-kept",
                                    new HandKept(
                                            now.id(),
                                            task,
                                            assigned.isNamed()
                                                    ? assigned.people().get(0)
                                                    : "")))));
        }
        return facts;
    }
}
