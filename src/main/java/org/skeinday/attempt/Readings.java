package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.skeinday.timing.Contact;
import org.skeinday.timing.HeldFlight;
import org.skeinday.timing.HoldRule;
import org.skeinday.timing.TimeDecision;
import org.skeinday.timing.WatchReading;
import org.skeinday.timing.Watches;
import org.skeinday.timing.WatchesRule;
import org.skeinday.units.FlightTime;

/** Which readings of a flight count: of each timekeeper the last that no later one corrects. */
public final class Readings {
    /** The last one of a watch is taken: a whole one, where there is one. */
    private static final Comparator<ReadingTaken> WHOLE_LAST =
            Comparator.comparing(ReadingTaken::isPartial).reversed();

    private Readings() {}

    /**
     * What a person must look at before these become an official time; empty when they agree.
     *
     * @param hold what the rules say of a model held by the building; empty when they say nothing
     */
    public static List<String> doubts(Timed timed, WatchesRule rule, Optional<HoldRule> hold) {
        List<String> doubts = new ArrayList<>(contradictions(timed, hold));
        doubts.addAll(ElapsedDoubts.of(timed));
        doubts.addAll(partial(timed));
        IntStream.rangeClosed(1, 3).forEach(slot -> doubts.addAll(ofMarks(timed, slot, hold)));
        Watches watches = watches(timed, hold);
        if (!watches.readings().isEmpty() && watches.decide(rule) instanceof TimeDecision.ForAPerson open) {
            doubts.addAll(open.reasons());
        }
        return doubts;
    }

    /** Of a watch that was taken over in the air a person says whether it counts: by itself it does not. */
    private static List<String> partial(Timed timed) {
        return thatCount(timed).stream()
                .filter(r -> r.isPartial() && JudgedReadings.word(r, timed).isEmpty())
                .map(r -> "Watch " + r.slot() + " was taken over in the air: its "
                        + new FlightTime(r.durationMs()).text(2)
                        + " is partial and does not count by itself. Say that it counts, or leave it out.")
                .toList();
    }

    /** Of a watch that the captain has judged nothing more is asked. */
    private static List<String> ofMarks(Timed timed, int slot, Optional<HoldRule> hold) {
        if (last(timed.judged()).containsKey(slot)) {
            return List.of();
        }
        List<String> doubts = new ArrayList<>(timed.marks().jumps(slot));
        if (timed.marks().fliesOn(slot, timed.readings())) {
            doubts.add(
                    "Watch " + slot + " says that its landing was a mistake and the model still flies. Wait for it.");
        }
        thatCount(timed).stream()
                .filter(r -> r.slot() == slot)
                .map(r -> held(r, timed.marks(), hold))
                .flatMap(Optional::stream)
                .filter(held -> held.ending() == HeldFlight.Ending.FOR_A_PERSON)
                .forEach(held -> doubts.add("Watch " + slot + ": " + held.how()));
        return doubts;
    }

    /** Empty when the rules say nothing of it, or nothing held the model. */
    private static Optional<HeldFlight> held(ReadingTaken reading, Marks marks, Optional<HoldRule> hold) {
        List<Contact> contacts = marks.held(reading.slot()).stream()
                .filter(c -> c.fromMs() <= reading.durationMs())
                .toList();
        return contacts.isEmpty()
                ? Optional.empty()
                : hold.map(rule -> HeldFlight.of(contacts, reading.durationMs(), rule));
    }

    /**
     * What the captain saw and no mark of a watch that counts says: whether its time has the rules' deduction is for a person
     * to say. Empty where the model came free in time, or each such watch has marked the catch itself.
     */
    public static Optional<String> caughtUnmarked(Timed timed, Aloft aloft, HoldRule hold) {
        Long caught = aloft.caughtMs();
        Long freed = aloft.freedMs();
        if (caught == null || freed != null && !hold.endsAtOnce() && freed - caught < hold.watchedMs()) {
            return Optional.empty();
        }
        String without = thatCount(timed).stream()
                .filter(r -> !JudgedReadings.isAside(r, timed)
                        && timed.marks().held(r.slot()).isEmpty())
                .map(r -> "watch " + r.slot())
                .collect(Collectors.joining(", "));
        return without.isEmpty()
                ? Optional.empty()
                : Optional.of("The captain saw it " + aloft.words() + "; no mark of " + without
                        + " says so. Type what it showed at the catch, or say that it has no time of it.");
    }

    /** Whether the rules end the flight where it was caught, and no watch that counts has marked that. */
    public static boolean lackCatch(Timed timed, Aloft aloft, HoldRule hold) {
        Long caught = aloft.caughtMs();
        Long freed = aloft.freedMs();
        Set<Integer> aside = setAside(timed.judged());
        return caught != null
                && (freed == null || hold.endsAtOnce() || freed - caught >= hold.watchedMs())
                && IntStream.rangeClosed(1, 3)
                        .filter(slot -> !aside.contains(slot))
                        .allMatch(slot -> timed.marks().held(slot).isEmpty());
    }

    /** One entry for each timekeeper who is heard of, after what the captain decided of the watches. */
    public static Watches watches(Timed timed, Optional<HoldRule> hold) {
        TreeMap<Integer, WatchReading> watches = new TreeMap<>();
        last(timed.judged()).values().stream()
                .filter(word -> word.says() == WatchVerdict.FAILED)
                .forEach(word -> watches.put(word.slot(), failed(word)));
        thatCount(timed).forEach(r -> watches.put(r.slot(), judged(r, timed, hold)));
        return new Watches(List.copyOf(watches.values()));
    }

    private static WatchReading judged(ReadingTaken reading, Timed timed, Optional<HoldRule> hold) {
        WatchReading.Counted counted = counted(reading, timed.marks(), hold);
        WatchJudged word = JudgedReadings.word(reading, timed).orElse(null);
        if (word == null) {
            return reading.isPartial() ? counted.leaveOut("the program", PARTIAL) : counted;
        }
        return word.says() == WatchVerdict.COUNTS
                ? counted
                : word.says() == WatchVerdict.FAILED ? failed(word) : counted.leaveOut("the captain", word.reason());
    }

    private static final String PARTIAL = "partial, taken over in the air";

    private static WatchReading failed(WatchJudged word) {
        return new WatchReading.Failed(String.valueOf(word.slot()), word.reason());
    }

    private static WatchReading.Counted counted(ReadingTaken reading, Marks marks, Optional<HoldRule> hold) {
        Optional<HeldFlight> held = held(reading, marks, hold);
        long ms = held.map(HeldFlight::flightMs).orElse(reading.durationMs());
        String contacts = marks.contacts(reading.slot());
        return new WatchReading.Counted(
                String.valueOf(reading.slot()),
                new FlightTime(ms),
                held.map(HeldFlight::how).orElse(contacts));
    }

    /** When the first watch that counts saw the release, epoch ms; empty where none of them did. */
    public static Optional<Long> released(Timed timed) {
        return timed.marks().release(setAside(timed.judged())).map(WatchMarked::atMs);
    }

    /** When the first watch that counts saw it land, epoch ms; empty where none of them saw both ends. */
    public static Optional<Long> landed(Timed timed) {
        return landings(timed).map(WatchMarked::atMs).min(Long::compare);
    }

    /** Where watches that count saw it land: each by its own release and duration. */
    public static Stream<WatchMarked> landings(Timed timed) {
        Set<Integer> without = setAside(timed.judged());
        return thatCount(timed).stream()
                .filter(r -> !without.contains(r.slot()) && !r.isPartial())
                .flatMap(r -> timed.marks().release(r.slot()).stream().map(m -> m.movedBy(r.durationMs())));
    }

    /** Places whose watch the captain has judged failed or left out. */
    public static Set<Integer> setAside(List<WatchJudged> judged) {
        return last(judged).values().stream()
                .filter(word -> word.says() != WatchVerdict.COUNTS)
                .map(WatchJudged::slot)
                .collect(Collectors.toSet());
    }

    private static SortedMap<Integer, WatchJudged> last(List<WatchJudged> judged) {
        SortedMap<Integer, WatchJudged> last = new TreeMap<>();
        judged.forEach(word -> last.put(word.slot(), word));
        return last;
    }

    /** Watches that count and have sent more than one time. */
    private static List<String> contradictions(Timed timed, Optional<HoldRule> hold) {
        List<String> doubts = new ArrayList<>();
        Set<String> corrected = corrected(timed.readings());
        for (WatchReading.Counted watch : watches(timed, hold).counted()) {
            List<String> times = timed.readings().stream()
                    .filter(r -> watch.watch().equals(String.valueOf(r.slot())) && !corrected.contains(r.id()))
                    .filter(r -> !JudgedReadings.isAside(r, timed))
                    .map(r -> new FlightTime(r.durationMs()).text(2))
                    .toList();
            if (times.size() > 1) {
                boolean partial = timed.readings().stream()
                        .anyMatch(r -> r.isPartial() && watch.watch().equals(String.valueOf(r.slot())));
                doubts.add("Watch " + watch.watch() + " has sent " + String.join(" and ", times)
                        + ", none as a correction: the " + (partial ? "whole one" : "last")
                        + " would count. Ask its timekeeper, then choose one.");
            }
        }
        return doubts;
    }

    /** Of watches that have sent more than one time, all that none corrects. @param all in the order of watches */
    public static List<ReadingTaken> severalOfOne(List<ReadingTaken> all) {
        Set<String> corrected = corrected(all);
        Map<Integer, List<ReadingTaken>> bySlot = all.stream()
                .filter(r -> !corrected.contains(r.id()))
                .collect(Collectors.groupingBy(ReadingTaken::slot, TreeMap::new, Collectors.toList()));
        return bySlot.values().stream()
                .filter(several -> several.size() > 1)
                .flatMap(List::stream)
                .toList();
    }

    static Set<String> corrected(List<ReadingTaken> all) {
        Set<String> corrected = new HashSet<>();
        all.forEach(reading -> {
            if (reading.corrects() != null) {
                corrected.add(reading.corrects());
            }
        });
        return corrected;
    }

    /**
     * One for each timekeeper's place, in the order of places: the last that no later one corrects and that the captain has
     * not set aside; where all of them are, the last. A partial one stands only where its watch has no other.
     */
    public static List<ReadingTaken> thatCount(Timed timed) {
        TreeMap<Integer, ReadingTaken> bySlot = new TreeMap<>();
        thatCount(timed.readings()).forEach(r -> bySlot.put(r.slot(), r));
        Set<String> corrected = corrected(timed.readings());
        timed.readings().stream()
                .filter(r -> !corrected.contains(r.id()) && !JudgedReadings.isAside(r, timed))
                .sorted(WHOLE_LAST)
                .forEach(r -> bySlot.put(r.slot(), r));
        return new ArrayList<>(bySlot.values());
    }

    /** @param all as they came in; @return one for each timekeeper's place, in the order of places */
    public static List<ReadingTaken> thatCount(List<ReadingTaken> all) {
        Set<String> corrected = corrected(all);
        TreeMap<Integer, ReadingTaken> bySlot = new TreeMap<>();
        all.stream().filter(r -> !corrected.contains(r.id())).sorted(WHOLE_LAST).forEach(r -> bySlot.put(r.slot(), r));
        return new ArrayList<>(bySlot.values());
    }
}
