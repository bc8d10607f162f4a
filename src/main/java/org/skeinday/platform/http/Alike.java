package org.skeinday.platform.http;

import java.time.Clock;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * What looks alike for many devices: a hall of them asks for it in one moment, and it is made once. Whoever asked before
 * it was begun takes it, however many more acts came meanwhile; so a rush makes one after the other, and never one for
 * each act that came in between. Words that tell the time are at most a second old.
 */
final class Alike<T> {
    /** A thing that was made for a second after the one asked for is fresh, unless the clock was set back meanwhile. */
    private static final long AHEAD_S = 5;

    private static final int MOST_KEPT =
            256; // keys hold what a device asks for: a stranger one must not fill the memory

    private final Map<String, Slot> slots = new ConcurrentHashMap<>();

    private record Made<T>(RecordMoment moment, long second, T thing) {
        boolean isFresh(RecordMoment asked, long askedSecond) {
            return moment.has(asked) && second >= askedSecond && second - askedSecond <= AHEAD_S;
        }
    }

    /**
     * @param key all that it depends on beside the record and the clock
     * @param asked the moment when the request came in
     * @param now the moment of the record
     * @param make called only when it must be made anew, by one thread at a time
     */
    T of(String key, RecordMoment asked, Supplier<RecordMoment> now, Clock clock, Supplier<T> make) {
        if (slots.size() > MOST_KEPT) {
            slots.clear();
        }
        return slots.computeIfAbsent(key, fresh -> new Slot()).at(asked, now, clock, make);
    }

    private final class Slot {
        private volatile @Nullable Made<T> last;

        T at(RecordMoment asked, Supplier<RecordMoment> now, Clock clock, Supplier<T> make) {
            long second = Math.floorDiv(clock.millis(), 1000L);
            @Nullable Made<T> made = last;
            return made != null && made.isFresh(asked, second) ? made.thing() : anew(asked, second, now, clock, make);
        }

        private synchronized T anew(
                RecordMoment asked, long second, Supplier<RecordMoment> now, Clock clock, Supplier<T> make) {
            @Nullable Made<T> made = last; // somebody else may have made it while this one waited
            if (made == null || !made.isFresh(asked, second)) {
                RecordMoment moment = now.get(); // before it is read, so that it is never younger than what it shows
                made = new Made<>(moment, Math.floorDiv(clock.millis(), 1000L), make.get());
                last = made;
            }
            return made.thing();
        }
    }
}
