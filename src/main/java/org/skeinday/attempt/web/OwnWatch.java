package org.skeinday.attempt.web;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.DayKind;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Caller;

/** Which attempt a device times, and with which of its watches. */
final class OwnWatch {
    private OwnWatch() {}

    /**
     * The one that was chosen where this device has a watch of it; what it times in the air, whoever is called meanwhile; else
     * the one that was chosen, the one that it has a watch of, the most urgent one; else the one that this device has just
     * timed: its reading stays in sight.
     */
    static Optional<AttemptNow> toTime(Tx tx, Today today, Caller caller, String asked) {
        return today.open().stream()
                .filter(a -> a.id().equals(asked) && isWatchOf(tx, a, caller))
                .findFirst()
                .or(() -> today.attempts().stream()
                        .filter(a -> today.live(a.id()).phase().name() == AttemptPhase.Name.IN_THE_AIR
                                && isWatchOf(tx, a, caller))
                        .findFirst())
                .or(() ->
                        today.open().stream().filter(a -> a.id().equals(asked)).findFirst())
                .or(() -> today.open().stream()
                        .filter(a -> !today.live(a.id()).phase().name().hasFlown() && isWatchOf(tx, a, caller))
                        .findFirst())
                .or(today::underWay)
                .or(() -> AttemptStore.lastTimedBy(tx, today.event().id(), caller.device()));
    }

    /** A place taken over by another device stays in sight here: what is tapped on it is evidence too. */
    static int place(Tx tx, AttemptNow attempt, List<WatchTaken> now, Caller caller, int asked) {
        List<Integer> own = Stream.concat(
                        now.stream(), WatchStore.everWatched(tx, attempt.id(), caller.device()).stream())
                .filter(w -> w.device().equals(caller.device()))
                .map(WatchTaken::slot)
                .toList();
        return own.contains(asked) ? asked : own.stream().findFirst().orElse(0);
    }

    /** The laptop may hold two watches, of one attempt or of two: each is one tap away, and none is forgotten. */
    static List<NowView.Choice> others(Tx tx, Today today, AttemptNow shown, int slot, Caller caller) {
        return today.attempts().stream()
                .filter(a -> today.isOpen(a) || today.live(a.id()).phase().name() == AttemptPhase.Name.LANDED)
                .flatMap(a -> WatchStore.watches(tx, a.id()).stream()
                        .filter(w -> w.device().equals(caller.device()))
                        .filter(w -> !a.id().equals(shown.id()) || w.slot() != slot)
                        .map(w -> new NowView.Choice(
                                "attempt=" + a.id() + "&slot=" + w.slot(),
                                "watch " + w.slot() + " of " + today.title(a) + ": "
                                        + PhaseWords.of(today.live(a.id())))))
                .toList();
    }

    /** The other attempts that are under way, with the watches that are free of those which have not landed. */
    static List<NowView.Choice> beside(Tx tx, Today today, AttemptNow shown) {
        return today.beside(shown.id()).stream()
                .map(other -> new NowView.Choice(other.id(), other.words() + free(tx, today, other.id())))
                .toList();
    }

    private static String free(Tx tx, Today today, String attempt) {
        AttemptPhase.Name name = today.live(attempt).phase().name();
        if (!today.live(attempt).isToFly() && name != AttemptPhase.Name.IN_THE_AIR) {
            return "";
        }
        List<Integer> taken =
                WatchStore.watches(tx, attempt).stream().map(WatchTaken::slot).toList();
        List<String> free = IntStream.rangeClosed(1, today.event().timekeepers())
                .filter(slot -> !taken.contains(slot))
                .mapToObj(String::valueOf)
                .toList();
        return free.isEmpty()
                ? ", all watches are taken"
                : free.size() == 1
                        ? ", watch " + free.get(0) + " is free"
                        : ", watches " + String.join(", ", free) + " are free";
    }

    /** Official times that this device has still to sign, whatever was called since; without what the page itself asks for. */
    static List<TimingView.ToSign> toSign(Tx tx, Today today, AttemptNow shown, int slot, Caller caller) {
        if (today.event().dayKind() != DayKind.HOSTING) {
            return List.of();
        }
        return WatchStore.ofDevice(tx, today.event().id(), caller.device()).stream()
                .filter(w -> !w.attemptId().equals(shown.id()) || w.slot() != slot)
                .flatMap(w -> today.attempts().stream()
                        .filter(a -> a.id().equals(w.attemptId()))
                        .flatMap(a -> toSign(tx, today, a, w.slot()).stream()))
                .toList();
    }

    private static Optional<TimingView.ToSign> toSign(Tx tx, Today today, AttemptNow attempt, int slot) {
        return today.live(attempt.id()).phase() instanceof AttemptPhase.Official official
                        && official.missing() > 0
                        && ResultRecord.signatures(tx, attempt.id()).lacks(AttemptSigned.watch(slot))
                ? Optional.of(new TimingView.ToSign(
                        attempt.id(),
                        slot,
                        today.title(attempt),
                        PageWords.time(official.officialMs(), today.event()),
                        official.officialMs()))
                : Optional.empty();
    }

    private static boolean isWatchOf(Tx tx, AttemptNow attempt, Caller caller) {
        return !WatchStore.everWatched(tx, attempt.id(), caller.device()).isEmpty();
    }
}
