package org.skeinday.attempt.action;

import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.action.GateAsked;
import org.skeinday.steps.action.WoundAt;

/** What the lists ask: at which winding place an attempt is wound, and who is called to one. Own entries only. */
public final class AttemptsWoundAt implements WoundAt {
    @Override
    public Optional<GateAsked.Wind> wind(Tx tx, String attempt) {
        return AttemptStore.find(tx, attempt)
                .filter(now -> WindingGate.isOwn(tx, now))
                .map(now -> WindingGate.wind(tx, now));
    }

    @Override
    public List<String> called(Tx tx, String event, Optional<String> station) {
        return AttemptStore.ofEvent(tx, event).stream()
                .filter(now -> now.state() == State.CALLED && WindingGate.isOwn(tx, now))
                .filter(now -> of(tx, now).map(StationAdded::id).equals(station))
                .map(AttemptNow::id)
                .toList();
    }

    /** Of an own attempt; empty for any other, and where no winding place is prepared. */
    static Optional<StationAdded> of(Tx tx, AttemptNow now) {
        return EntryStore.find(tx, now.entryId())
                .filter(EntryAdded::own)
                .flatMap(entry -> Stations.of(tx, entry, now.id()));
    }
}
