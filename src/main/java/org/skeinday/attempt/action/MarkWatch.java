package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LandedAttempt;
import org.skeinday.attempt.Marks;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.WatchMark;
import org.skeinday.attempt.WatchMarked;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** A timekeeper's other keys: ready, contacts, and what takes a mistaken press back. None is refused for being late. */
final class MarkWatch {
    /** What comes with other taps, and not alone. */
    private static final List<WatchMark> NOT_ALONE =
            List.of(WatchMark.RELEASED, WatchMark.GAP, WatchMark.RELOADED, WatchMark.LATE_RELEASE, WatchMark.APART);

    private static final Set<WatchMark> ABOUT_CONTACTS =
            EnumSet.of(WatchMark.TOUCHED, WatchMark.HELD, WatchMark.TAKEN_BACK);

    /**
     * One press.
     *
     * @param what a word of {@link WatchMark}
     * @param ms from release to the press on the device's own monotonic clock; null before the release
     * @param about id of the tap that it takes back
     * @param serverMs when, by the server's clock as the device knew it, epoch ms; null when it did not
     * @param boundMs by how much that may be wrong
     */
    record Mark(
            String attempt,
            int slot,
            String what,
            @Nullable Long ms,
            @Nullable String about,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    private MarkWatch() {}

    static Decision decide(Tx tx, ActContext context, Mark mark) {
        AttemptNow attempt = AttemptStore.find(tx, mark.attempt()).orElse(null);
        if (attempt == null || !WatchActions.holds(tx, context, mark.attempt(), mark.slot())) {
            return WatchActions.notThisWatch(mark.slot());
        }
        Optional<WatchMark> what = WatchMark.of(mark.what()).filter(m -> !NOT_ALONE.contains(m));
        Long ms = mark.ms();
        if (what.isEmpty() || (ms != null && (ms < 0 || ms > ReadingTaken.LONGEST_MS))) {
            return Decision.refused("A watch has no key '" + mark.what() + "' at " + ms + " ms");
        }
        var seen = WatchActions.seen(attempt, context, mark.serverMs(), mark.boundMs());
        List<Fact> facts = new ArrayList<>(List.of(WatchActions.mark(
                context, context.ownId(), attempt.id(), mark.slot(), what.get(), ms, about(tx, mark), seen)));
        if (what.get() == WatchMark.NOT_RELEASED) {
            facts.addAll(neverLeft(tx, attempt, mark.slot(), seen.atMs()));
        } else if (what.get() == WatchMark.STILL_FLYING) {
            facts.addAll(fliesOn(tx, attempt, mark.slot(), seen.atMs()));
        }
        if (ABOUT_CONTACTS.contains(what.get())) {
            facts.addAll(AsksAgain.contacts(tx, context, attempt.id()));
        }
        return new Decision.Decided(facts, Map.of(), Set.of("attempts", "motors", "checks"));
    }

    /** Only what this watch itself has sent of this attempt can be taken back. */
    private static @Nullable String about(Tx tx, Mark mark) {
        if (mark.about() == null) {
            return null;
        }
        String id = ActContext.ownIdOf(mark.about());
        boolean own = Stream.concat(
                        WatchStore.allReadings(tx, mark.attempt()).stream()
                                .filter(r -> r.slot() == mark.slot())
                                .map(ReadingTaken::id),
                        WatchStore.marked(tx, mark.attempt()).stream()
                                .filter(m -> m.slot() == mark.slot())
                                .map(WatchMarked::id))
                .anyMatch(id::equals);
        return own ? id : null;
    }

    /** Unless another watch has seen the release too. */
    private static List<Fact> neverLeft(Tx tx, AttemptNow now, int slot, long atMs) {
        Marks marks = WatchStore.marks(tx, now.id());
        boolean others = Stream.of(1, 2, 3)
                .filter(other -> other != slot)
                .anyMatch(other -> marks.release(other).isPresent());
        return others || !(Attempt.of(now) instanceof ReleasedAttempt released)
                ? List.of()
                : TakeBack.release(tx, now, released, atMs);
    }

    /** Unless another watch has seen the landing too. */
    private static List<Fact> fliesOn(Tx tx, AttemptNow now, int slot, long atMs) {
        boolean others = WatchStore.readings(tx, now.id()).stream().anyMatch(r -> r.slot() != slot);
        return others || !(Attempt.of(now) instanceof LandedAttempt landed)
                ? List.of()
                : List.of(Fact.of("attempt.taken-back", landed.fliesOn(atMs)));
    }
}
