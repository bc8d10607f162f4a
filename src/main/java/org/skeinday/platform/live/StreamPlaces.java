package org.skeinday.platform.live;

import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.skeinday.platform.http.Caller;

/**
 * Who gets one of the places for open streams. The laptop, timekeepers, captains and coaches have places of their own, which nobody else
 * takes; beyond them they stand in places of the others as long as nobody asks for those. Where all are taken, a device with
 * fewer open than another by two gets the place of one of the other's: so a few devices with many tabs never keep a hall
 * outside. Spectators stand behind the crew: they have places as long as there are any, and give them up first.
 */
final class StreamPlaces {
    /** Places that only the laptop, timekeepers, captains and coaches take. */
    static final int KEPT = 60;

    /** Places of all others. */
    static final int OTHERS = LiveHub.MOST_STREAMS - KEPT;

    /** Most that spectators have together: a place costs memory, whoever stands in it. */
    static final int SPECTATORS = 100;

    /** Who asks for a place. */
    enum Kind {
        KEPT,
        CREW,
        SPECTATOR
    }

    private StreamPlaces() {}

    /**
     * What becomes of one who asks for a place.
     *
     * @param admitted whether it has one now
     * @param gives the device that gives one of its own up for it; empty for none
     */
    record Answer(boolean admitted, Optional<String> gives) {
        private static final Answer NO = new Answer(false, Optional.empty());
    }

    /**
     * Decides for one more stream.
     *
     * @param open how many streams each device of a kind has open
     */
    static Answer ask(String device, Kind kind, Function<Kind, Map<String, Long>> open) {
        Map<String, Long> spectators = open.apply(Kind.SPECTATOR);
        Map<String, Long> others = new HashMap<>(open.apply(Kind.CREW));
        others.putAll(spectators); // no device is of two kinds
        boolean full = sum(others) >= OTHERS || sum(open.apply(Kind.KEPT)) + sum(others) >= LiveHub.MOST_STREAMS;
        if (kind == Kind.SPECTATOR) {
            return ask(device, spectators, full ? (int) sum(spectators) : SPECTATORS);
        }
        if (full && kind == Kind.CREW && !spectators.isEmpty() && mayHaveMore(device, others)) {
            return new Answer(true, most(spectators).map(Map.Entry::getKey));
        }
        return ask(device, kind == Kind.KEPT, open.apply(Kind.KEPT), others);
    }

    /**
     * The same without spectators.
     *
     * @param kept whether it has the places that are kept
     * @param ofKept how many streams each device has open that has kept places; {@code ofOthers} each other one
     */
    static Answer ask(String device, boolean kept, Map<String, Long> ofKept, Map<String, Long> ofOthers) {
        boolean free = sum(ofKept) + sum(ofOthers) < LiveHub.MOST_STREAMS;
        if (kept) {
            return free && mayHaveMore(device, ofKept) ? new Answer(true, Optional.empty()) : ask(device, ofKept, KEPT);
        }
        boolean lent = !free && sum(ofOthers) < OTHERS; // whoever has kept places stands in theirs
        return lent && mayHaveMore(device, ofOthers)
                ? new Answer(true, most(ofKept).map(Map.Entry::getKey))
                : ask(device, ofOthers, OTHERS);
    }

    /** The laptop is everybody's: what looks like many tabs of it may be a hall behind one address. */
    private static boolean mayHaveMore(String device, Map<String, Long> open) {
        return device.equals(Caller.LAPTOP) || open.getOrDefault(device, 0L) < LiveHub.MOST_OF_ONE;
    }

    private static long sum(Map<String, Long> open) {
        return open.values().stream().mapToLong(Long::longValue).sum();
    }

    private static Optional<Map.Entry<String, Long>> most(Map<String, Long> open) {
        return open.entrySet().stream().max(Comparator.comparingLong(Map.Entry::getValue));
    }

    /**
     * The same among those that share some places.
     *
     * @param open how many streams each device has open, of those that share its places
     * @param all how many there are for them together
     */
    static Answer ask(String device, Map<String, Long> open, int all) {
        long own = open.getOrDefault(device, 0L);
        if (!mayHaveMore(device, open)) {
            return Answer.NO;
        }
        if (sum(open) < all) {
            return new Answer(true, Optional.empty());
        }
        Optional<String> gives =
                most(open).filter(most -> most.getValue() >= own + 2).map(Map.Entry::getKey);
        return new Answer(gives.isPresent(), gives);
    }
}
