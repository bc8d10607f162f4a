package org.skeinday.timing;

/**
 * One question and answer between a device and the server, in microseconds; RFC 5905 §8.
 *
 * @param t1 question sent, by the device
 * @param t2 question come in, by the server
 * @param t3 answer sent, by the server
 * @param t4 answer come in, by the device
 */
public record ClockExchange(long t1, long t2, long t3, long t4) {
    public ClockExchange {
        if (t4 < t1 || t3 < t2 || t4 - t1 < t3 - t2) {
            throw new IllegalArgumentException("An answer must come after its question and take no less time than the"
                    + " server took, but the moments were " + t1 + ", " + t2 + ", " + t3 + ", " + t4 + " µs");
        }
    }

    /** Time under way, both ways together, µs. */
    public long delay() {
        return (t4 - t1) - (t3 - t2);
    }

    /** What to add to the device's clock to have the server's, and how far off that may be. */
    public ClockOffset offset() {
        // Both halves are whole or neither is; the half goes from the offset into the bound, which stays a bound.
        return new ClockOffset(Math.floorDiv((t2 - t1) + (t3 - t4), 2L), -Math.floorDiv(-delay(), 2L));
    }
}
