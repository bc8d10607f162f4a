package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.NextTurn;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.WindowAdded;

/** In which order entries come to fly: own ones as the plan in force has them, else by their windows. */
final class TurnOrder {
    private final Today today;

    TurnOrder(Today today) {
        this.today = today;
    }

    /**
     * The entry whose attempt comes next, by plan and windows; within one window who has had fewer flights, then by the call
     * order, own entries before others.
     */
    Optional<EntryAdded> next(long nowMs) {
        List<NextTurn.Turn> turns = today.entries().stream()
                .filter(today::hasAttemptLeft)
                .map(entry -> turn(entry, nowMs))
                .filter(turn -> turn.closesMs() == null || turn.closesMs() > nowMs)
                .toList();
        Comparator<NextTurn.Turn> alike = Comparator.comparing(turn -> today.entry(turn.entry()), byTurn());
        return new NextTurn(alike, nowMs).of(turns).map(turn -> today.entry(turn.entry()));
    }

    private NextTurn.Turn turn(EntryAdded entry, long nowMs) {
        Optional<WindowAdded> window = today.window(entry, nowMs);
        return new NextTurn.Turn(
                entry.id(),
                window.map(WindowAdded::opensAtMs).orElse(null),
                window.map(WindowAdded::closesAtMs).orElse(null),
                plannedWind(entry));
    }

    /** Own entries that may still fly, in the order in which their next attempts come: as planned, else as windows close. */
    List<EntryAdded> own() {
        return today.entries().stream()
                .filter(EntryAdded::own)
                .filter(today::mayStillFly)
                .sorted(Comparator.comparingLong(this::planned).thenComparing(byTurn()))
                .toList();
    }

    private long planned(EntryAdded entry) {
        Long wind = plannedWind(entry);
        return wind == null ? Long.MAX_VALUE : wind;
    }

    /** Of the attempt that an own entry calls next; null where no plan names it. */
    private @Nullable Long plannedWind(EntryAdded entry) {
        return entry.own()
                ? today.plannedWinds()
                        .get(entry.name() + " " + today.nextNumber(entry).rule())
                : null;
    }

    private Comparator<EntryAdded> byTurn() {
        return Comparator.comparingLong((EntryAdded e) ->
                        today.window(e).map(WindowAdded::closesAtMs).orElse(Long.MAX_VALUE))
                .thenComparing(this::flightsHad)
                .thenComparing(Today::callOrder)
                .thenComparing(e -> !e.own())
                .thenComparing(EntryAdded::name);
    }

    /** In one window all fly in turn: who has had fewer comes first. */
    private int flightsHad(EntryAdded entry) {
        return today.event().attempts() - today.tally(entry).flightsLeft();
    }
}
