package org.skeinday.timing;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Sentence;

/**
 * One watch's flight after what the building did to it.
 *
 * @param flightMs release to the end that counts, ms
 * @param endedMs the moment on the watch at which the flight was over, ms after release
 * @param deductedMs {@code endedMs} less {@code flightMs}
 * @param how a sentence with every contact
 */
public record HeldFlight(Ending ending, long flightMs, long endedMs, long deductedMs, String how) {
    /** Own rule: who stops later than this after the watching is over may have forgotten that the model was freed. */
    private static final long LATE_MS = 5_000;

    /** What ended the flight. */
    public enum Ending {
        STOPPED,
        HELD,
        /** Stopped while held, before the watching was over or long after it: the stop, or the freeing, is not sure. */
        FOR_A_PERSON
    }

    /**
     * Goes through the contacts in the order of time; the first that held for the whole watching ends the flight.
     *
     * @param stoppedMs when the watch was stopped, ms after release
     */
    public static HeldFlight of(List<Contact> contacts, long stoppedMs, HoldRule rule) {
        inOrder(contacts, stoppedMs);
        List<String> how = new ArrayList<>();
        for (Contact contact : contacts) {
            long over = contact.fromMs() + rule.watchedMs();
            if (rule.endsAtOnce()) {
                how.add(contact.words() + ": the flight was over then");
                return new HeldFlight(Ending.HELD, over, over, 0, said(how, over));
            }
            Long freed = contact.freedMs();
            if (freed == null && stoppedMs > over + LATE_MS) {
                how.add(contact.words() + " and stopped only " + seconds(stoppedMs - over)
                        + " after the flight would have" + " been over: say whether it was freed");
                return new HeldFlight(Ending.FOR_A_PERSON, stoppedMs, stoppedMs, 0, said(how, stoppedMs));
            }
            if ((freed == null ? stoppedMs : freed) >= over) {
                how.add(contact.words() + ", still held after " + seconds(rule.watchedMs())
                        + ": the flight was over at " + text(over) + ", less " + seconds(rule.deductMs()));
                long flight = over - rule.deductMs();
                return new HeldFlight(Ending.HELD, flight, over, rule.deductMs(), said(how, flight));
            }
            if (freed == null) {
                how.add(contact.words() + " and stopped after " + seconds(stoppedMs - contact.fromMs()) + ", before "
                        + seconds(rule.watchedMs()) + " were watched: say whether it came down then");
                return new HeldFlight(Ending.FOR_A_PERSON, stoppedMs, stoppedMs, 0, said(how, stoppedMs));
            }
            how.add(contact.words() + ", freed after " + seconds(freed - contact.fromMs()) + ": the clock went on");
        }
        how.add("stopped at " + text(stoppedMs));
        return new HeldFlight(Ending.STOPPED, stoppedMs, stoppedMs, 0, said(how, stoppedMs));
    }

    private static void inOrder(List<Contact> contacts, long stoppedMs) {
        long before = 0;
        for (Contact contact : contacts) {
            if (contact.fromMs() < before || contact.fromMs() > stoppedMs) {
                throw new IllegalArgumentException("Contacts must come one after the other and before the stop at "
                        + stoppedMs + " ms, but one begins at " + contact.fromMs() + " ms");
            }
            Long freed = contact.freedMs();
            before = freed == null ? Long.MAX_VALUE : freed;
        }
    }

    private static String said(List<String> how, long flightMs) {
        String words = String.join("; ", how);
        return Sentence.begin(words) + ": " + text(flightMs);
    }

    private static String text(long ms) {
        return new FlightTime(ms).text(2);
    }

    private static String seconds(long ms) {
        return new FlightTime(ms).seconds(2) + " s";
    }
}
