package org.skeinday.platform.live;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;

/**
 * Who gets one of the places for open streams. The laptop, captains and coaches have places of their own, which nobody else
 * takes. Where all are taken, a device with fewer open than another by two gets the place of one of the other's: so a few
 * devices with many tabs never keep a hall outside.
 */
final class StreamPlaces {
    /** Places that only the laptop, captains and coaches take. */
    static final int KEPT = 60;

    /** Places of all others. */
    static final int OTHERS = LiveHub.MOST_STREAMS - KEPT;

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
     * @param open how many streams each device has open, of those that share its places
     * @param all how many there are for them together
     */
    static Answer ask(String device, Map<String, Long> open, int all) {
        long own = open.getOrDefault(device, 0L);
        if (own >= LiveHub.MOST_OF_ONE) {
            return Answer.NO;
        }
        long taken = open.values().stream().mapToLong(Long::longValue).sum();
        if (taken < all) {
            return new Answer(true, Optional.empty());
        }
        Optional<String> gives = open.entrySet().stream()
                .max(Comparator.comparingLong(Map.Entry::getValue))
                .filter(most -> most.getValue() >= own + 2)
                .map(Map.Entry::getKey);
        return new Answer(gives.isPresent(), gives);
    }
}
