package org.skeinday.attempt.web;

import java.util.Optional;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.AwaitedWatches;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.action.TimeDoubts;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.platform.db.Tx;

/**
 * What of an attempt's watches a reader of a page is told: while it is quiet nobody is told a time, and who is no captain is
 * told none before each watch has its own, so that nobody who times sees another's first.
 *
 * @param doubts what stands against taking the time; empty where it is not told
 */
record WatchesTold(Timed timed, AwaitedWatches awaited, boolean hidden, Optional<TimeDoubts> doubts) {

    static WatchesTold of(Tx tx, LiveAttempt attempt, EventAdded event, Optional<TimeDoubts> doubts, boolean captain) {
        Timed timed = WatchStore.timed(tx, attempt.id());
        boolean landed = attempt.phase().name() == AttemptPhase.Name.LANDED;
        boolean elsewhere = event.dayKind() == DayKind.VISITING;
        boolean differ = landed
                && doubts.filter(d -> !d.found().isEmpty()).isPresent()
                && !(elsewhere && AttemptStore.note(tx, attempt.id()).announcedMs() != null);
        AwaitedWatches awaited = AwaitedWatches.of(timed, event.timekeepers(), differ, elsewhere);
        boolean flown = landed || attempt.phase().name() == AttemptPhase.Name.IN_THE_AIR;
        boolean hidden = flown && !captain && !awaited.areAllIn();
        return new WatchesTold(timed, awaited, hidden, hidden ? Optional.empty() : doubts);
    }
}
